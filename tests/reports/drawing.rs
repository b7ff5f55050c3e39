//! Findings drawn under the lines they point at.

use tholebook::reports;
use tholebook::reports::Glyphs;
use tholebook::reports::Look;
use tholebook::rules::Edit;

use crate::sound_book::SoundBook;
use crate::telling::BOAT;
use crate::telling::PLAIN;
use crate::telling::TIGHT;
use crate::telling::text;
use crate::telling::text_of;
use crate::telling::told;

#[test]
fn a_finding_is_drawn_under_every_line_that_takes_part_in_both_files() {
    let drawn = text(&[TIGHT]);
    let expected = "\
gap-too-tight  kittiwake/seat-1/rowlock/gap

  D danger: Kittiwake, seat 1: the gap clears oar A1 by 3.0 mm, good to
  │ ± 0.3 mm: 2.0 mm short (at least 5 mm)
    ╭─[boats/kittiwake.yaml:43:12]
 42 │     rowlock:
 43 │       gap: 55
    ·            ─┬
    ·             ╰── this gap
 44 │       after-tip: 3
    ╰────
    ╭─[oars/long-ash.yaml:10:21]
 10 │     shaft: {widest: 52, narrowest: 46, bears: flat, leather: wet}
    ·                     ─┬
    ·                      ╰── the widest part of A1
    ╰────
  help: ";
    assert!(drawn.contains(expected), "{drawn}");
    assert!(drawn.contains("        limit: at least 5 mm, from class surfboat (no published"));
}

#[test]
fn no_line_is_wider_than_asked_for() {
    for width in [60, 80, 100] {
        for glyphs in [Glyphs::Unicode, Glyphs::Ascii] {
            let look = Look { width, glyphs, colour: false };
            let pitch: Edit =
                (BOAT, "", "lean-out: -0.09 deg}", "lean-out: -0.09 deg, lean-oot: 1}");
            let drawn = text_of(&SoundBook::with(&[TIGHT, pitch]), look);
            let wide: Vec<&str> = drawn
                .lines()
                .filter(|line| line.chars().count() > width && !line.starts_with("checked "))
                .collect();
            assert!(wide.is_empty(), "{width}: {wide:#?}");
        }
    }
}

#[test]
fn plain_glyphs_are_ascii_all_through() {
    let look = Look { glyphs: Glyphs::Ascii, ..PLAIN };
    let drawn = text_of(&SoundBook::with(&[TIGHT]), look);
    assert!(drawn.is_ascii(), "{drawn}");
    assert!(drawn.contains("    ,-[boats/kittiwake.yaml:43:12]"), "{drawn}");
}

#[test]
fn colours_change_nothing_but_colours() {
    let coloured = text_of(&SoundBook::with(&[TIGHT]), Look { colour: true, ..PLAIN });
    let mut stripped = String::new();
    let mut rest = coloured.as_str();
    while let Some(at) = rest.find("\u{1b}[") {
        stripped.push_str(&rest[..at]);
        rest = &rest[at + rest[at..].find('m').expect("the end of a colour") + 1..];
    }
    stripped.push_str(rest);
    assert!(coloured.len() > stripped.len());
    assert_eq!(stripped, text(&[TIGHT]));
    assert!(coloured.contains("38;2;192;88;0"), "orange");
}

#[test]
fn the_level_is_told_by_letter_and_word() {
    let drawn = text(&[TIGHT, (BOAT, "", "wind: light", "wund: light")]);
    assert!(drawn.contains("  D danger: "), "{drawn}");
    assert!(drawn.contains("  F fault: "), "{drawn}");
}

#[test]
fn a_place_at_the_very_end_of_a_file_is_still_drawn() {
    let (book, mut checked) = SoundBook::with(&[TIGHT]).check();
    let end = book.file(checked.findings[0].labels[0].place.file).text.len();
    let span = &mut checked.findings[0].labels[0].place.span;
    (span.start, span.end) = (end, end);
    let drawn = told(&book, &checked, |report| reports::text(report, PLAIN));
    let lines = SoundBook::with(&[TIGHT]).lines().filter(|(path, ..)| path == BOAT).count();
    let after = lines + 1;
    assert!(drawn.contains(&format!("[{BOAT}:{after}:1]")), "{drawn}");
    assert!(drawn.contains("╰── this gap"), "{drawn}");
}

#[test]
fn a_mark_of_several_lines_is_drawn_on_its_first() {
    let (book, mut checked) = SoundBook::with(&[TIGHT]).check();
    checked.findings[0].labels[0].place.span.end += 100;
    let drawn = told(&book, &checked, |report| reports::text(report, PLAIN));
    assert!(drawn.contains("43 │       gap: 55\n    ·            ─┬\n"), "{drawn}");
}

#[test]
fn a_very_long_line_is_cut_around_what_is_pointed_at() {
    let club = |n: usize| format!("x-{n}: 1, ");
    let many: String = (0..100).map(club).collect();
    let mut book = SoundBook::new();
    book.edit(BOAT, "", "foot-holes: {", &format!("foot-holes: {{{many}furst: 1, "));
    let drawn = text_of(&book, PLAIN);
    let line = drawn.lines().find(|line| line.contains("│ …")).unwrap_or_else(|| panic!("{drawn}"));
    assert!(line.chars().count() <= 80 && line.ends_with('…'), "{line}");
    let mark = drawn.lines().skip_while(|other| *other != line).nth(1).expect("the marks");
    let under: String =
        line.chars().zip(mark.chars()).filter(|(_, m)| "─┬".contains(*m)).map(|(c, _)| c).collect();
    assert_eq!(under, "furst");
}
