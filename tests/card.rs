//! A boat's rig card: verdicts, what was not measured, width, hostile text, the command.

mod sound_book;

use std::process::Command;
use std::process::Output;

use sound_book::SoundBook;
use tholebook::reports;
use tholebook::reports::Glyphs;
use tholebook::reports::Look;
use tholebook::reports::Report;
use tholebook::reports::WHERE_THE_SUMS_STOP;
use tholebook::reports::shown::is_hidden;
use tholebook::rules::Edit;
use tholebook::units::Date;

const PLAIN: Look = Look { width: 80, glyphs: Glyphs::Unicode, colour: false };
const BOAT: &str = "boats/kittiwake.yaml";
const TIGHT: Edit = (BOAT, "seat: 1", "gap: 60", "gap: 55");
const LEANING: Edit = (BOAT, "seat: 2", "lean: {aft: 0.5", "lean: {aft: 6");

fn card_in(edits: &[Edit], look: Look) -> String {
    let (book, checked) = SoundBook::with(edits).check();
    let as_of = Date::read("2026-11-01").expect("a day");
    let report = Report { book: &book, checked: &checked, as_of, only: &[], earlier: None };
    reports::card(&report, &book.boats[0], look)
}

fn card(edits: &[Edit]) -> String {
    card_in(edits, PLAIN)
}

/// The cells of the first row that begins so: a column of 20 signs, then one of 15 a seat.
#[track_caller]
fn row(card: &str, called: &str) -> Vec<String> {
    let row = card.lines().find(|line| line.trim_start().starts_with(called));
    let row = row.unwrap_or_else(|| panic!("no {called:?} in:\n{card}"));
    let signs: Vec<char> = row.chars().skip(20).collect();
    signs.chunks(15).map(|cell| cell.iter().collect::<String>().trim().to_owned()).collect()
}

#[track_caller]
fn holds(text: &str, part: &str) {
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains(part), "no {part:?} in:\n{text}");
}

#[test]
fn a_sound_boat_has_her_head_her_values_and_nothing_against_her() {
    let card = card(&[]);
    assert!(card.starts_with("Kittiwake (kittiwake), class surfboat\nRigged 2026-10-17"), "{card}");
    holds(&card, "(15 days ago) on the trailer by Ines Marlow, checked by Tomas Reyne");
    holds(&card, "roll 0.10 deg, good to ± 0.23 deg: clear");
    holds(&card, "Level mark: after edge of thwart 2, found afloat 2026-09-05");
    holds(&card, "spares: A5");
    for absent in ["NOT TO GO AFLOAT", "Open defects", "Knocks", "Walk round", "as a whole"] {
        assert!(!card.contains(absent), "{absent} in:\n{card}");
    }
    assert_eq!(row(&card, "gap, mm"), ["60 clear"; 4]);
    assert_eq!(row(&card, "oar")[0], "A1 clear");
}

/// By hand: 6 mm over the gauge of 150 mm lean atan(6/150) = 2.29 deg; 60 mm less 52 mm are 8 mm.
#[test]
fn each_value_stands_over_what_follows_from_it_and_how_good_that_is() {
    let card = card(&[LEANING]);
    assert_eq!(row(&card, "lean aft, mm")[1], "6 F fault");
    assert_eq!(row(&card, "true lean, deg")[1], "2.29 ± 0.32");
    assert_eq!(row(&card, "clearance")[0], "8.0 ± 0.3");
}

#[test]
fn a_verdict_is_a_letter_and_a_word_and_only_of_the_value_it_is_of() {
    let fault = card(&[LEANING]);
    assert_eq!(row(&fault, "lean aft, mm"), ["0.5 clear", "6 F fault", "0.5 clear", "0.5 clear"]);
    assert_eq!(row(&fault, "lean out, mm"), ["-0.5 clear"; 4]);
    let unsure = card(&[(BOAT, "seat: 1", "lean: {aft: 0.5", "lean: {aft: 3")]);
    assert_eq!(row(&unsure, "lean aft, mm")[0], "3 U unsure");
    let danger = card(&[TIGHT]);
    assert_eq!(row(&danger, "gap, mm"), ["55 D danger", "60 clear", "60 clear", "60 clear"]);
    assert_eq!(row(&danger, "spare A5, mm")[..2], ["D danger", "clear"]);
}

#[test]
fn a_danger_is_told_in_full_under_the_words_not_to_go_afloat() {
    let card = card(&[TIGHT]);
    let second = card.lines().nth(1);
    assert_eq!(second, Some("NOT TO GO AFLOAT"), "{card}");
    holds(&card, "D danger gap-too-tight: Kittiwake, seat 1: the gap clears oar A1 by 3.0 mm");
    holds(&card, "Bend the after horn only");
    holds(&card, "Cold-bending weakens metal");
}

#[test]
fn a_boat_out_of_use_is_not_to_go_afloat_and_says_why() {
    let out = "class: surfboat\nout-of-use: {since: 2026-10-20, by: Ines Marlow, because: plank}";
    let card = card(&[(BOAT, "", "class: surfboat", out)]);
    holds(&card, "NOT TO GO AFLOAT out of use since 2026-10-20 by Ines Marlow: plank");
}

#[test]
fn what_was_not_measured_says_so_and_is_never_called_clear() {
    let card = card(&[
        (BOAT, "seat: 2", "      gap: 60\n", ""),
        (BOAT, "seat: 3", "    chock-to-pin: 600\n", ""),
        (BOAT, "seat: 4", "    seat-mark: 61\n", ""),
    ]);
    assert_eq!(row(&card, "gap, mm")[1], "not measured D");
    assert_eq!(row(&card, "clearance")[1], "-");
    assert_eq!(row(&card, "chock to pin, mm")[2], "not measured -");
    assert_eq!(row(&card, "seat mark, mm")[3], "not measured -");
    holds(&card, "U unsure not-measured: Kittiwake, seat 3");
}

#[test]
fn without_a_level_no_lean_is_called_clear() {
    let card = card(&[(BOAT, "", "level: {trim: 0.0, roll: 0.1}", "level: {roll: 0.1}")]);
    holds(&card, "Level: trim not measured; roll 0.10 deg");
    assert_eq!(row(&card, "lean aft, mm"), ["0.5 -"; 4]);
    assert_eq!(row(&card, "square off, mm"), ["11 -"; 4]);
}

#[test]
fn a_limit_that_is_switched_off_leaves_its_values_not_checked() {
    let off = "limits:\n  surfboat:\n    handle: none\npeople:";
    let card = card(&[("club.yaml", "", "people:", off)]);
    assert_eq!(row(&card, "past mark, mm"), ["321 -"; 4]);
}

#[test]
fn an_oar_that_was_not_lifted_out_is_told_at_its_seat() {
    let jams = (BOAT, "seat: 2", "{square: freely, catch: freely", "{square: freely, catch: jams");
    let card = card(&[jams]);
    let lifts = card.split("lift out by hand\n").nth(1).expect("the trials");
    assert_eq!(row(lifts, "catch")[..2], ["freely clear", "jams D danger"]);
}

#[test]
fn defects_knocks_and_the_walk_round_stand_below_with_their_verdicts() {
    let card = card(&[
        (BOAT, "", "foot-straps: ok", "foot-straps: watch"),
        (BOAT, "", "    hull: ok\n", ""),
        (
            BOAT,
            "",
            "seats:\n  - seat: 1",
            "knocks:\n  - {date: 2026-10-20, what: rolled, where: [seat-3]}\ndefects:\n  - {found: 2026-10-21, what: loose thwart, state: watch}\nseats:\n  - seat: 1",
        ),
    ]);
    holds(&card, "Open defects loose thwart, found 2026-10-21: N note");
    holds(&card, "Knocks since 2026-10-20: rolled (seat-3): F fault");
    holds(&card, "Walk round foot-straps: to be watched: N note not looked at: hull: U unsure");
}

#[test]
fn what_is_found_of_the_boat_as_a_whole_stands_below_with_its_remedy() {
    let card = card(&[(
        BOAT,
        "seat: 3",
        "pitch: {catch: 11, square: 11, finish: 11}",
        "pitch: {catch: 15, square: 15, finish: 15}",
    )]);
    let whole = card.split("The boat as a whole\n").nth(1).expect("findings of the boat");
    holds(whole, "F fault pitch-mismatch: Kittiwake: square off the blades differ");
    holds(whole, "Bend the forward horn only");
}

#[test]
fn seats_stand_from_bow_to_stern_whatever_their_order_in_the_file() {
    let edits: [Edit; 2] = [
        (
            BOAT,
            "",
            "- seat: 1\n    side: starboard\n    oar: A1",
            "- seat: 3\n    side: starboard\n    oar: A3",
        ),
        (
            BOAT,
            "seat: 2",
            "- seat: 3\n    side: starboard\n    oar: A3",
            "- seat: 1\n    side: starboard\n    oar: A1",
        ),
    ];
    let card = card(&edits);
    assert_eq!(row(&card, "oar")[..3], ["A1 clear", "A2 clear", "A3 clear"]);
    assert_eq!(row(&card, "seat 1"), ["seat 1", "seat 2", "seat 3", "seat 4"]);
}

#[test]
fn the_card_says_where_its_sums_stop_and_never_that_she_may_go() {
    for edits in [&[][..], &[TIGHT], &[LEANING]] {
        let card = card(edits);
        holds(&card, WHERE_THE_SUMS_STOP);
        let lower = card.to_lowercase();
        assert!(!lower.contains("safe") && !lower.contains("fit to go"), "{card}");
    }
}

#[test]
fn nothing_is_wider_than_asked_for() {
    let long = (BOAT, "", "spares: [A5]", "spares: [A5, a-spare-with-a-very-long-name-of-its-own]");
    for width in [40, 80] {
        for glyphs in [Glyphs::Unicode, Glyphs::Ascii] {
            let card = card_in(&[TIGHT, long], Look { width, glyphs, colour: false });
            let widest = card.lines().map(|line| line.chars().count()).max();
            assert!(widest <= Some(width), "{widest:?} of {width}:\n{card}");
            assert!(glyphs == Glyphs::Unicode || card.is_ascii(), "{card}");
        }
    }
}

#[test]
fn colour_adds_nothing_but_colour() {
    let coloured = card_in(&[TIGHT], Look { colour: true, ..PLAIN });
    assert!(coloured.contains("\u{1b}["), "{coloured}");
    let mut plain = String::new();
    let mut rest = coloured.as_str();
    while let Some((before, after)) = rest.split_once('\u{1b}') {
        plain.push_str(before);
        rest = after.split_once('m').expect("the end of a colour").1;
    }
    plain.push_str(rest);
    assert_eq!(plain, card(&[TIGHT]));
}

#[test]
fn hostile_text_cannot_steer_the_terminal() {
    let card = card(&[
        (BOAT, "", "name: Kittiwake", "name: \"K\\e[31m\\u202Eitti\""),
        (BOAT, "", "by: Ines Marlow", "by: \"I\\e[2J\""),
        (BOAT, "", "after edge of thwart 2", "\"thwart\\a\""),
        (
            BOAT,
            "",
            "seats:\n  - seat: 1",
            "knocks:\n  - {date: 2026-10-20, what: \"\\e]0;x\\a\"}\nseats:\n  - seat: 1",
        ),
    ]);
    assert!(!card.replace('\n', "").contains(is_hidden), "{card}");
    holds(&card, "K\\u{1b}[31m\\u{202e}itti");
}

fn run(arguments: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    command.args(arguments).args(["--book", "tests/data/sound-book"]);
    command.output().expect("the program runs")
}

#[test]
fn the_command_shows_a_boat_with_exit_code_0() {
    let shown = run(&["card", "kittiwake", "--as-of", "2027-11-01"]);
    assert_eq!(shown.status.code(), Some(0), "overdue, but a card does not gate");
    let out = String::from_utf8(shown.stdout).expect("UTF-8");
    holds(&out, "F fault overdue");
    assert_eq!(run(&["settings"]).status.code(), Some(0));
}

#[test]
fn an_unknown_boat_ends_with_2_and_the_nearest_is_offered() {
    let refused = run(&["card", "kitiwake"]);
    assert_eq!(refused.status.code(), Some(2));
    let err = String::from_utf8(refused.stderr).expect("UTF-8");
    holds(&err, "There is no boat called kitiwake. Did you mean kittiwake?");
    let err = String::from_utf8(run(&["card", "zzzz"]).stderr).expect("UTF-8");
    holds(&err, "There is no boat called zzzz. There are kittiwake.");
}

/// A waived value is told as waived, not as clear and not as a fault.
#[test]
fn what_the_club_lives_with_is_told_as_waived() {
    let out = std::process::Command::new(env!("CARGO_BIN_EXE_tholebook"))
        .args(["card", "kittiwake", "--book", "example-club", "--as-of", "2026-11-01"])
        .output()
        .expect("the program runs");
    let text = String::from_utf8(out.stdout).expect("UTF-8");
    let row = text.lines().find(|line| line.contains("past mark, mm")).expect("the row");
    assert!(row.contains("296 waived") && row.contains("321 clear"), "{row}");
}
