//! Readings, days, ids, words and texts.

use super::told::pairs;
use super::told::read;
use super::told::seat;

#[test]
fn a_list_is_several_readings_of_one_value() {
    let (read, told) = seat("seat-mark: [61, 62.5, 6 cm]");
    assert!(told.is_empty(), "{told:?}");
    let values: Vec<f64> =
        read.seat_mark.expect("a mark").values.iter().map(|value| value.as_mm()).collect();
    assert_eq!(values, [61.0, 62.5, 60.0]);
}

#[test]
fn one_wrong_reading_of_a_list_is_told_alone_and_none_is_used() {
    let (read, told) = seat("seat-mark: [61, sixty, 1e3, [60]]");
    let expected = [("not-a-number", "sixty"), ("not-a-number", "1e3"), ("unreadable", "[60]")];
    assert_eq!(pairs(&told), expected);
    assert!(read.seat_mark.is_none());
}

#[test]
fn an_empty_list_is_no_reading() {
    let (_, told) = seat("seat-mark: []");
    assert_eq!(pairs(&told), [("unreadable", "[]")]);
}

#[test]
fn slopes_of_one_list_are_written_alike() {
    for mixed in ["[11, 3.6 deg]", "[11 over 176, 11]", "[11 over 176, 11 over 150]"] {
        let (read, told) = seat(&format!("pitch: {{square: {mixed}}}"));
        assert_eq!(pairs(&told), [("wrong-unit", mixed)]);
        assert!(read.pitch.square.is_none());
    }
    let (_, told) = seat("pitch: {square: [11 over 176, 12 over 176]}");
    assert!(told.is_empty(), "{told:?}");
}

#[test]
fn a_reading_may_say_how_finely_it_was_read() {
    let (read, told) = seat("rowlock: {gap: {read: [58, 58.4], to: 0.2}}");
    assert!(told.is_empty(), "{told:?}");
    let gap = read.rowlock.gap.expect("a gap");
    assert_eq!(gap.values.len(), 2);
    assert_eq!(gap.to.map(|to| to.as_mm()), Some(0.2));
}

#[test]
fn a_fineness_of_nothing_or_of_another_kind_is_refused() {
    let cases = [
        ("rowlock: {gap: {read: 58, to: 0}}", "out-of-bounds", "0"),
        ("rowlock: {gap: {read: 58, to: -0.2}}", "out-of-bounds", "-0.2"),
        ("pitch: {square: {read: 3.6 deg, to: -1 deg}}", "out-of-bounds", "-1 deg"),
        ("pitch: {square: {read: 11, to: 0.1 deg}}", "wrong-unit", "0.1 deg"),
        ("pitch: {square: {read: 3.6 deg, to: 0.5}}", "wrong-unit", "0.5"),
        ("rowlock: {gap: {read: 58, to: fine}}", "not-a-number", "fine"),
    ];
    for (line, rule, text) in cases {
        let (_, told) = seat(line);
        assert_eq!(pairs(&told), [(rule, text)], "{line}");
    }
}

#[test]
fn a_group_without_its_reading_and_a_strange_key_beside_it_are_told() {
    let (_, told) = seat("rowlock: {gap: {too: 0.2, to: 0.2}}");
    let rules: Vec<&str> = told.iter().map(|told| told.rule).collect();
    assert_eq!(rules, ["missing-key", "unknown-key"]);
    assert_eq!(told[1].name, "petrel/seat-1/rowlock/gap/too");
}

#[test]
fn what_was_not_measured_is_absent_and_no_fault() {
    for nothing in ["not measured", "'not measured'", "", "~", "null"] {
        let (read, told) = seat(&format!("seat-mark: {nothing}\nrowlock: {nothing}\nside: port"));
        // `side` stands there twice: only that is told.
        assert_eq!(pairs(&told), [("key-twice", "side")], "{nothing}");
        assert!(read.seat_mark.is_none() && read.rowlock.gap.is_none(), "{nothing}");
    }
}

#[test]
fn what_must_be_there_is_missing_even_when_it_is_called_not_measured() {
    let text = "boat: b\nclass: not measured\noars: o\nrigged: {date: , by: I.}\n";
    let (_, told) = read(text);
    assert_eq!(pairs(&told), [("missing-key", "class"), ("missing-key", "date")]);
}

#[test]
fn ids_that_read_as_yes_or_no_are_refused_quoted_or_not() {
    let wrong = [
        "no", "yes", "On", "off", "n", "Y", "true", "'null'", "5A", "A 1", "A_1", "Å1", "-A", "''",
    ];
    for id in wrong {
        let text = format!("crew: c\nboat: {id}\n");
        let (book, told) = read(&text);
        assert_eq!(pairs(&told), [("wrong-id", id)], "{id}");
        assert!(book.crews[0].boat.is_none(), "{id}");
    }
    for id in ["A1", "long-ash", "'A1'", "no-go", "x"] {
        let (_, told) = read(&format!("crew: c\nboat: {id}\n"));
        assert!(told.is_empty(), "{id}: {told:?}");
    }
}

#[test]
fn only_days_of_the_calendar_are_days() {
    for day in ["17.10.2026", "2026-02-30", "2026-10", "26-10-17", "20261017", "today", "2026"] {
        let (_, told) =
            read(&format!("boat: b\nclass: c\noars: o\nrigged: {{date: {day}, by: I.}}\n"));
        assert_eq!(pairs(&told), [("not-a-date", day)]);
        assert!(told[0].help.contains("2026-10-17"), "{}", told[0].help);
    }
}

#[test]
fn a_wrong_word_is_told_with_those_that_are_known_and_the_nearest() {
    let (_, told) = seat("rowlock: {turns: freee}\nlifts-out: {square: easily}");
    assert_eq!(pairs(&told), [("wrong-word", "freee"), ("wrong-word", "easily")]);
    assert_eq!(told[0].help, "Did you mean `free`? One of: free, stiff, seized.");
    assert_eq!(told[1].help, "Write one of: freely, stiffly, jams.");
}

#[test]
fn a_text_cut_short_by_a_hash_is_told_and_one_in_quotes_is_whole() {
    let (_, told) = seat("note: horn #2 re-bent");
    assert_eq!(pairs(&told), [("unreadable", "#2 re-bent")]);
    assert_eq!(told[0].also.as_deref(), Some("horn"));
    let (read, told) = seat("note: 'horn #2 re-bent'");
    assert!(told.is_empty(), "{told:?}");
    assert_eq!(read.note.map(|note| note.value).as_deref(), Some("horn #2 re-bent"));
    let (_, told) = seat("note: horn re-bent  # looked at twice");
    assert!(told.is_empty(), "{told:?}");
}

#[test]
fn a_text_of_several_lines_is_read_where_it_may_be_and_refused_elsewhere() {
    let (read, told) = seat("note: |\n  horn re-bent\n  looked at again");
    assert!(told.is_empty(), "{told:?}");
    assert_eq!(
        read.note.map(|note| note.value).as_deref().map(str::trim_end),
        Some("horn re-bent\nlooked at again")
    );
    let (_, told) = super::told::read(
        "boat: b\nname: |\n  Petrel\n  the second\nclass: c\noars: o\nrigged: {date: 2026-10-17, by: I.}\n",
    );
    assert_eq!(pairs(&told), [("unreadable", "|\n  Petrel\n  the second")]);
}

#[test]
fn the_items_of_the_walk_round_are_the_clubs_own_words() {
    let text = "boat: b\nclass: c\noars: o\nrigged:\n  date: 2026-10-17\n  by: I.\n  walk-round: {bung: ok, our-own-thing: watch, hull: fine}\n";
    let (book, told) = read(text);
    assert_eq!(pairs(&told), [("wrong-word", "fine")]);
    assert_eq!(told[0].name, "b/rigged/walk-round/hull");
    let items: Vec<&str> =
        book.boats[0].rigged.walk_round.iter().map(|walk| walk.item.value.as_str()).collect();
    assert_eq!(items, ["bung", "our-own-thing"]);
}

#[test]
fn a_value_knows_the_bytes_it_was_written_at() {
    let text = super::told::boat_with_seat("seat-mark: \"6 cm\"\npitch: {catch: [11, 12]}");
    let (book, _) = read(&text);
    let seat = &book.boats[0].seats[0];
    let at = |place: tholebook::model::Place| &text[place.span.start..place.span.end];
    assert_eq!(seat.seat_mark.as_ref().map(|mark| at(mark.place)), Some("\"6 cm\""));
    assert_eq!(seat.pitch.catch.as_ref().map(|catch| at(catch.place)), Some("[11, 12]"));
    assert_eq!(seat.oar.as_ref().map(|oar| at(oar.place)), Some("A1"));
}
