//! Single edits, each with the text as it must stand afterwards.

use tholebook::reading::RecordKind;
use tholebook::reading::form;
use tholebook::writing::addressing::address;
use tholebook::writing::editing::Address;
use tholebook::writing::editing::Deed;
use tholebook::writing::editing::Meaning;
use tholebook::writing::editing::Refused;
use tholebook::writing::editing::Wording;
use tholebook::writing::editing::edited;
use tholebook::writing::editing::edited_in_form;

const BOAT: &str = "\
boat: petrel   # the old one
rigged:
  date: 2026-10-17
  level: {trim: 0.0, roll: 0.1}
seats:
  # starboard leathers are new
  - seat: 1
    rowlock: {gap: 58, long: 38} # re-bent
    pitch: {catch: 11, square: 11}
  - seat: 2
    rowlock:
      gap: 57.5   # twice
      long: not measured
knocks:
  - {date: 2026-10-18, what: rolled in the shore break}
";

fn seat(number: &str) -> Address {
    Address::root().key("seats").part("seat", number)
}

fn set(text: &str, at: &Address, word: &str) -> String {
    edited(text, at, &Deed::Set(&Wording::word(word))).expect("it can be set")
}

fn removed(text: &str, at: &Address) -> String {
    edited(text, at, &Deed::Remove).expect("it can be taken out")
}

fn knock(what: &str) -> Wording {
    let word = |text: &str| Meaning::Word(text.to_owned());
    Wording::of(Meaning::Map(vec![
        ("date".to_owned(), word("2026-11-02")),
        ("what".to_owned(), word(what)),
    ]))
}

#[test]
fn a_value_gives_way_to_another_and_its_comment_stays() {
    let text = set(BOAT, &seat("2").key("rowlock").key("gap"), "58.25");
    assert_eq!(text, BOAT.replace("gap: 57.5   # twice", "gap: 58.25   # twice"));
    let text = set(BOAT, &seat("1").key("rowlock").key("gap"), "57");
    assert_eq!(text, BOAT.replace("{gap: 58,", "{gap: 57,"));
    let text = set(BOAT, &Address::root().key("boat"), "tern");
    assert_eq!(text, BOAT.replace("petrel ", "tern "));
}

#[test]
fn a_new_value_comes_at_the_end_of_its_section() {
    let text = set(BOAT, &seat("1").key("pitch").key("finish"), "10.5");
    assert_eq!(text, BOAT.replace("square: 11}", "square: 11, finish: 10.5}"));
    let text = set(BOAT, &seat("2").key("rowlock").key("horn"), "62");
    assert_eq!(text, BOAT.replace("not measured\n", "not measured\n      horn: 62\n"));
    let text = set(BOAT, &seat("1").key("oar"), "A1");
    assert_eq!(text, BOAT.replace("square: 11}\n", "square: 11}\n    oar: A1\n"));
}

#[test]
fn the_sections_on_the_way_come_with_the_value() {
    let text = set(BOAT, &seat("2").key("pin").key("lean").key("aft"), "0.5");
    let after = "not measured\n    pin: {lean: {aft: 0.5}}\n";
    assert_eq!(text, BOAT.replace("not measured\n", after));
    let text = set(BOAT, &seat("3").key("oar"), "A3");
    assert_eq!(text, BOAT.replace("knocks:", "  - {seat: 3, oar: A3}\nknocks:"));
}

#[test]
fn what_was_not_measured_gives_way_to_a_reading() {
    let text = set(BOAT, &seat("2").key("rowlock").key("long"), "38");
    assert_eq!(text, BOAT.replace("not measured", "38"));
    for (empty, full) in [
        ("boat: a\nname:\nclass: b\n", "boat: a\nname: x\nclass: b\n"),
        ("boat: a\nname: ~ # none\n", "boat: a\nname: x # none\n"),
        ("boat: a\nname:   # none\n", "boat: a\nname: x   # none\n"),
        ("{boat: a, name: , class: b}", "{boat: a, name: x , class: b}"),
        ("{boat: a, name}", "{boat: a, name: x}"),
    ] {
        assert_eq!(set(empty, &Address::root().key("name"), "x"), full);
    }
    let text = "boat: a\nrowlock: not measured\n";
    let text = set(text, &Address::root().key("rowlock").key("gap"), "58");
    assert_eq!(text, "boat: a\nrowlock: {gap: 58}\n");
}

#[test]
fn a_part_joins_the_end_of_a_list() {
    let at = Address::root().key("knocks");
    let text = edited(BOAT, &at, &Deed::Append(&knock("fell off the trailer"))).expect("a list");
    assert_eq!(text, format!("{BOAT}  - {{date: 2026-11-02, what: fell off the trailer}}\n"));
    let at = Address::root().key("bends");
    let text = edited(BOAT, &at, &Deed::Append(&knock("x"))).expect("a new list");
    assert_eq!(text, format!("{BOAT}bends:\n  - {{date: 2026-11-02, what: x}}\n"));
    for (before, after) in [("[]", "[A5]"), ("[A1]", "[A1, A5]"), ("~", "[A5]")] {
        let text = format!("boat: a\nspares: {before} # here\n");
        let at = Address::root().key("spares");
        let text = edited(&text, &at, &Deed::Append(&Wording::word("A5"))).expect("a list");
        assert_eq!(text, format!("boat: a\nspares: {after} # here\n"));
    }
}

#[test]
fn lines_from_elsewhere_keep_their_comments() {
    let meaning = Meaning::Map(vec![
        ("found".to_owned(), Meaning::Word("2026-11-02".to_owned())),
        ("what".to_owned(), Meaning::Word("a crack".to_owned())),
    ]);
    let lines = "found: 2026-11-02\nwhat: a crack # look again".to_owned();
    let defect = Wording::as_written(meaning, lines);
    let text = edited(
        "boat: a\ndefects:\n- found: 2026-01-01\n  what: b\n",
        &Address::root().key("defects"),
        &Deed::Append(&defect),
    );
    assert_eq!(
        text.expect("a list"),
        "boat: a\ndefects:\n- found: 2026-01-01\n  what: b\n- found: 2026-11-02\n  what: a crack # look again\n"
    );
}

#[test]
fn what_is_taken_out_leaves_its_comment_behind() {
    let text = removed(BOAT, &seat("2").key("rowlock").key("gap"));
    assert_eq!(text, BOAT.replace("gap: 57.5   # twice", "# twice"));
    let text = removed(BOAT, &seat("1").key("rowlock").key("gap"));
    assert_eq!(text, BOAT.replace("gap: 58, ", ""));
    let text = removed(BOAT, &seat("1").key("rowlock").key("long"));
    assert_eq!(text, BOAT.replace(", long: 38", ""));
    let text = removed(BOAT, &Address::root().key("knocks"));
    assert!(text.ends_with("long: not measured\n"), "{text}");
    let text = removed(BOAT, &Address::root().key("knocks").number(1));
    assert!(text.ends_with("knocks:\n"), "{text}");
    let text = removed(BOAT, &seat("1"));
    assert!(text.contains("are new\n  - seat: 2"), "{text}");
}

#[test]
fn line_ends_byte_order_mark_and_a_missing_last_line_end_stay() {
    let dos = BOAT.replace('\n', "\r\n");
    let text = set(&dos, &seat("2").key("rowlock").key("horn"), "62");
    assert_eq!(text, dos.replace("measured\r\n", "measured\r\n      horn: 62\r\n"));
    let marked = format!("\u{feff}{BOAT}");
    assert!(set(&marked, &seat("1").key("oar"), "A1").starts_with("\u{feff}boat: petrel "));
    let open = BOAT.trim_end();
    let text = set(open, &Address::root().key("oars"), "long-ash");
    assert_eq!(text, format!("{open}\noars: long-ash"));
    assert_eq!(removed(&text, &Address::root().key("oars")), open);
}

#[test]
fn a_text_that_would_read_otherwise_is_put_in_quotes() {
    for hard in [
        "a: b",
        "# no",
        "null",
        "no",
        "- x",
        "it's \"so\"",
        "a, b",
        "[x]",
        " x ",
        "two\nlines",
        "",
        "é\u{7}",
        "no character \u{ffff}",
        "@x",
        "%x",
        "`x",
        "*x",
        "&x",
        "!x",
        "|",
        "?",
    ] {
        let text = set(BOAT, &Address::root().key("name"), hard);
        let read: serde_yaml::Value = serde_yaml::from_str(&text).expect("it is YAML");
        assert_eq!(read["name"], serde_yaml::Value::String(hard.to_owned()), "{text}");
    }
}

#[test]
fn a_text_with_a_fault_is_not_touched() {
    for faulty in ["boat: a\nboat: b\n", "boat: [a\n", "boat: &x a\n", "", "a: 1\n---\nb: 2\n"] {
        let refused = edited(faulty, &Address::root().key("name"), &Deed::Set(&Wording::word("x")));
        assert!(matches!(refused, Err(Refused::Faulty { .. })), "{faulty:?}: {refused:?}");
    }
}

#[test]
fn a_way_barred_by_another_value_is_refused() {
    let barred =
        edited(BOAT, &Address::root().key("boat").key("x"), &Deed::Set(&Wording::word("x")));
    assert!(matches!(barred, Err(Refused::NoSuchPlace { .. })), "{barred:?}");
    let missing = edited(BOAT, &Address::root().key("oars"), &Deed::Remove);
    assert!(matches!(missing, Err(Refused::NoSuchPlace { .. })), "{missing:?}");
    let own = edited(BOAT, &seat("1").key("seat"), &Deed::Remove);
    assert!(matches!(own, Err(Refused::NamesItsPart { .. })), "{own:?}");
}

/// Sets a word where the form of a boat has its key.
#[track_caller]
fn set_in_form(text: &str, below: &str, word: &str) -> String {
    let at = address(RecordKind::Boat, below).expect("a place of a boat");
    let deed = Deed::Set(&Wording::word(word));
    edited_in_form(text, &at, &deed, &form(RecordKind::Boat)).expect("it can be done")
}

#[test]
fn a_new_key_stands_where_the_form_has_it() {
    let text = "boat: kittiwake\nseats:\n  - seat: 1\n    side: port\n    pitch: {finish: 12}\n    \
                # re-bent\n    note: worn\n";
    let wide = set_in_form(text, "seat-1/rowlock/gap", "58");
    assert!(wide.contains("    side: port\n    rowlock: {gap: 58}\n    pitch:"), "{wide}");
    let square = set_in_form(text, "seat-1/pitch/square", "11");
    assert!(square.contains("pitch: {square: 11, finish: 12}\n"), "{square}");
    let listed = set_in_form("seats:\n  - oar: A1\n", "seats/1/side", "port");
    assert_eq!(listed, "seats:\n  - side: port\n    oar: A1\n");
    let worked = set_in_form(text, "seat-1/worked-out/pitch", "3.58 deg");
    assert!(worked.contains("worked-out: {pitch: 3.58 deg}\n    # re-bent\n"), "{worked}");
    let dated = set_in_form(text, "rigged/date", "2026-10-17");
    assert!(dated.starts_with("boat: kittiwake\nrigged: {date: 2026-10-17}\nseats:"), "{dated}");
}
