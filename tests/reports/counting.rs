//! Many findings, lines, and what is counted at the end.

use tholebook::model::Book;
use tholebook::reports;
use tholebook::reports::Look;
use tholebook::rules;
use tholebook::rules::Checked;
use tholebook::rules::Edit;
use tholebook::rules::Level;
use tholebook::units::Date;

use crate::sound_book::SoundBook;
use crate::telling::BOAT;
use crate::telling::PLAIN;
use crate::telling::TIGHT;
use crate::telling::text;
use crate::telling::text_of;
use crate::telling::told;

/// Makes notes of one rule by hand, at as many lines of the boat.
fn notes(count: usize, level: Level) -> (Book, Checked) {
    let (book, mut checked) = SoundBook::with(&[TIGHT]).check();
    let mut one = checked.findings[0].clone();
    one.level = level;
    checked.findings = vec![one; count];
    (book, checked)
}

#[test]
fn more_than_five_alike_notes_become_one_with_a_count() {
    let (book, checked) = notes(6, Level::Note);
    let drawn = told(&book, &checked, |report| reports::text(report, PLAIN));
    assert_eq!(drawn.matches("  N note: ").count(), 1, "{drawn}");
    assert!(drawn.contains("and 5 more like it: "), "{drawn}");
    assert!(drawn.contains("--format json"), "{drawn}");
    assert!(drawn.contains(":\n  0 dangers, 0 faults, 0 unsure, 6 notes\n"), "{drawn}");
    let brief = told(&book, &checked, |report| reports::brief(report, PLAIN));
    assert_eq!(brief.matches(": note gap-too-tight ").count(), 6, "{brief}");
}

#[test]
fn five_notes_and_any_number_of_faults_are_drawn_one_by_one() {
    for (count, level, letter) in [(5, Level::Note, "N note"), (9, Level::Fault, "F fault")] {
        let (book, checked) = notes(count, level);
        let drawn = told(&book, &checked, |report| reports::text(report, PLAIN));
        assert_eq!(drawn.matches(letter).count(), count, "{drawn}");
    }
}

#[test]
fn after_a_hundred_drawings_of_one_file_the_rest_are_told_on_a_line_each() {
    let (book, checked) = notes(130, Level::Fault);
    let drawn = told(&book, &checked, |report| reports::text(report, PLAIN));
    assert_eq!(drawn.matches("  F fault: ").count(), 100);
    assert_eq!(drawn.matches("boats/kittiwake.yaml:43:12: fault gap-too-tight ").count(), 30);
}

#[test]
fn brief_is_one_line_a_finding() {
    let (book, checked) = SoundBook::with(&[TIGHT]).check();
    let brief = told(&book, &checked, |report| reports::brief(report, PLAIN));
    let expected = "boats/kittiwake.yaml:43:12: danger gap-too-tight \
                    kittiwake/seat-1/rowlock/gap: Kittiwake, seat 1: the gap clears";
    assert!(brief.starts_with(expected), "{brief}");
    assert_eq!(brief.lines().count(), checked.findings.len() + 1);
}

#[test]
fn a_boat_out_of_use_is_told_as_such() {
    let out: Edit = (
        BOAT,
        "",
        "class: surfboat",
        "class: surfboat\nout-of-use: {since: 2026-10-20, by: Ines Marlow, because: sprung plank}",
    );
    let drawn = text(&[TIGHT, out]);
    assert!(drawn.contains("danger (boat out of use: shown only): Kittiwake"), "{drawn}");
    assert!(drawn.contains(" of them on boats out of use\n"), "{drawn}");
}

/// The readings of the sound book, counted by hand: 2 of the level, 2 of the foot holes, 18 at each
/// of 4 seats, 1 of the pitch mark, 12 of each of 5 oars, 7 of the crew.
#[test]
fn the_last_line_counts_in_plain_words() {
    let sound = text(&[]);
    let expected = "checked 1 boat, 1 oar set, 1 crew, 144 readings:\n  0 dangers, 0 faults, \
                    0 unsure, 0 notes\n";
    assert!(sound.starts_with(expected), "{sound}");
    assert!(sound.contains("A clean report is no permission to launch"), "{sound}");
    let lacking = text(&[(BOAT, "seat: 1", "      gap: 60\n", "")]);
    assert!(lacking.contains(" checks not made: not measured\n"), "{lacking}");
}

#[test]
fn where_nothing_was_read_nothing_is_cautioned() {
    let (book, faults) = tholebook::reading::read("new", Vec::new());
    let as_of = Date::read("2026-11-01").expect("a day");
    let checked = rules::check(&book, &faults, rules::Check { as_of });
    let drawn = told(&book, &checked, |report| reports::text(report, PLAIN));
    let expected = "checked 0 boats, 0 oar sets, 0 crews, 0 readings:\n  0 dangers, 0 faults, \
                    0 unsure, 0 notes\n";
    assert_eq!(drawn, expected);
}

#[test]
fn what_was_checked_is_broken_where_it_is_too_wide_and_else_is_one_line() {
    let lacking = SoundBook::with(&[TIGHT, (BOAT, "seat: 1", "      horn: 46\n", "")]);
    let counted = |width: usize| {
        let whole = text_of(&lacking, Look { width, ..PLAIN });
        let from = whole.find("checked 1 boat").expect("what was checked");
        let to = whole.find("A clean report").expect("the caution");
        whole[from..to].to_owned()
    };
    let one_line = counted(300);
    assert_eq!(one_line.lines().count(), 1, "{one_line}");
    assert!(one_line.contains("notes; ") && one_line.ends_with("not measured\n"), "{one_line}");
    for width in [80, 60, 40, 24] {
        let lines = counted(width);
        assert!(lines.lines().all(|line| line.chars().count() <= width), "{width}: {lines}");
        let words = |text: &str| text.split_whitespace().map(str::to_owned).collect::<Vec<_>>();
        assert_eq!(words(&lines), words(&one_line));
    }
    let first = counted(80);
    assert!(first.starts_with("checked 1 boat, 1 oar set, 1 crew, 143 readings:\n"), "{first}");
    assert!(first.lines().skip(1).all(|line| line.starts_with("  ")), "{first}");
}
