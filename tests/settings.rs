//! Every setting in force, with where it is set and what it overrides.

mod sound_book;

use sound_book::SoundBook;
use tholebook::model::LimitKey;
use tholebook::model::Part;
use tholebook::reports;
use tholebook::reports::Glyphs;
use tholebook::reports::Look;
use tholebook::reports::shown::is_hidden;
use tholebook::rules::Edit;
use tholebook::working::InForce;
use tholebook::working::Layer;

const PLAIN: Look = Look { width: 80, glyphs: Glyphs::Unicode, colour: false };
const CLUB: &str = "club.yaml";
const BOAT: &str = "boats/kittiwake.yaml";

fn limits(limits: &'static str) -> Edit {
    (CLUB, "", "people:", limits)
}

fn settings_in(edits: &[Edit], look: Look) -> String {
    reports::settings(&SoundBook::with(edits).check().0, look)
}

/// The settings as one line, so that no sentence is parted.
fn told(edits: &[Edit]) -> String {
    let text = settings_in(edits, PLAIN);
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[track_caller]
fn holds(text: &str, part: &str) {
    assert!(text.contains(part), "no {part:?} in:\n{text}");
}

const TIGHTER: &str = "limits:\n  surfboat:\n    clearance: {least: 6, source: minute 7}\npeople:";

#[test]
fn every_limit_of_the_class_is_listed_with_its_source() {
    let text = told(&[]);
    holds(&text, "Class surfboat: Kittiwake level at most 1 deg either way");
    for (_, key, _) in LimitKey::ALL {
        holds(&text, &format!(" {key} "));
    }
    holds(
        &text,
        "arc at most 0.6 deg: pitch of one blade, from catch to finish class surfboat (common practice",
    );
    holds(&text, "bends at most 3 times, at most 10 deg in all");
    holds(&text, "catch 50 deg: oar forward of square, class surfboat");
    holds(&text, "collar 30 mm");
}

#[test]
fn a_limit_of_the_club_tells_file_line_source_and_what_it_overrides() {
    let text = told(&[limits(TIGHTER)]);
    holds(&text, "clearance at least 6 mm: gap less the widest part of the shaft");
    holds(
        &text,
        "club.yaml:13 (minute 7), over class surfboat: at least 5 mm. A danger limit: it can't be switched off",
    );
}

#[test]
fn a_limit_without_a_source_is_set_by_the_club() {
    let text = told(&[limits("limits:\n  surfboat:\n    loose: {most: 12}\npeople:")]);
    holds(&text, "club.yaml:13 (set by the club), over class surfboat: at most 15 mm");
}

#[test]
fn a_limit_that_is_switched_off_says_so_and_what_held_below() {
    let text = told(&[limits("limits:\n  surfboat:\n    loose: none\npeople:")]);
    holds(&text, "loose none, switched off: gap less the narrowest");
    holds(&text, "club.yaml:13, over class surfboat: at most 15 mm");
}

#[test]
fn a_danger_limit_that_was_to_be_switched_off_stays_in_force_and_says_so() {
    let text = told(&[limits("limits:\n  surfboat:\n    clearance: none\npeople:")]);
    holds(&text, "clearance at least 5 mm: gap less");
    holds(&text, "it can't be switched off; club.yaml:13 says none in vain");
}

#[test]
fn of_a_range_the_end_that_another_layer_sets_is_told_by_itself() {
    let text = told(&[limits("limits:\n  surfboat:\n    pitch: {most: 6 deg}\npeople:")]);
    holds(&text, "pitch at least 3 deg: pitch square off class surfboat");
    holds(
        &text,
        "pitch at most 6 deg: pitch square off club.yaml:13 (set by the club), over class surfboat: at most 7 deg",
    );
}

#[test]
fn a_boat_with_limits_of_her_own_is_told_apart_with_only_those() {
    let own = (BOAT, "", "seats:\n", "limits:\n  clearance: {least: 7, source: hers}\nseats:\n");
    let text = told(&[limits(TIGHTER), own]);
    holds(&text, "Class surfboat: Kittiwake (and limits of her own)");
    holds(&text, "clearance at least 6 mm");
    let apart = text.split("Kittiwake: limits of her own; all others as class surfboat").nth(1);
    let apart = apart.expect("a list of her own");
    holds(apart, "clearance at least 7 mm");
    holds(apart, "(hers), over club.yaml:13: at least 6 mm, and class surfboat: at least 5 mm");
    assert!(!apart.contains("pitch-match"), "{apart}");
}

#[test]
fn boats_of_one_class_are_told_together() {
    let (book, _) =
        SoundBook::with(&[("boats/tern.yaml", "", "", "boat: tern\nclass: surfboat\n")]).check();
    let text = reports::settings(&book, PLAIN);
    holds(&text, "Class surfboat: Kittiwake, tern\n");
    assert_eq!(text.matches("pitch-match").count(), 1, "{text}");
}

#[test]
fn an_unknown_class_leaves_the_danger_limit_in_force() {
    let text = told(&[(BOAT, "", "class: surfboat", "class: longboat")]);
    holds(&text, "Class longboat, which this book doesn't have: Kittiwake");
    holds(&text, "clearance at least 5 mm: gap less the widest part of the shaft class surfboat");
    holds(&text, "arc not set");
}

#[test]
fn limits_for_a_class_that_no_boat_has_are_told() {
    let text = told(&[limits("limits:\n  surfbaot:\n    loose: none\npeople:")]);
    holds(&text, "club.yaml:12 sets limits for class surfbaot; no boat is of that class.");
}

#[test]
fn each_tool_tells_how_finely_it_reads_by_day_club_or_use() {
    let text = told(&[(CLUB, "", "  rule: 0.5\n", "")]);
    holds(&text, "callipers ± 0.2 mm: club.yaml:4, over what is usual: ± 0.2 mm");
    holds(&text, "rule ± 0.5 mm: what is usual bob");
    let day = (BOAT, "", "  wind: light\n", "  wind: light\n  readings: {rule: 0.2}\n");
    let text = told(&[day]);
    holds(
        &text,
        "The same on Kittiwake's rigging day of 2026-10-17 rule ± 0.2 mm: boats/kittiwake.yaml:14, over club.yaml:5: ± 0.5 mm",
    );
}

#[test]
fn the_limit_in_force_is_the_first_layer_that_says_anything() {
    let own = (BOAT, "", "seats:\n", "limits:\n  clearance: none\nseats:\n");
    let (book, _) = SoundBook::with(&[limits(TIGHTER), own]).check();
    let in_force = InForce::new(&book, &book.boats[0]);
    let said: Vec<_> = in_force.said(LimitKey::Clearance, Part::Least).collect();
    let layers: Vec<_> = said.iter().map(|said| (said.layer, said.off)).collect();
    assert_eq!(layers, [(Layer::Boat, true), (Layer::Club, false), (Layer::Class, false)]);
    let limit = in_force.limit(LimitKey::Clearance, Part::Least);
    assert_eq!(limit, said[1].limit);
}

#[test]
fn nothing_is_wider_than_asked_for() {
    let own = (BOAT, "", "seats:\n", "limits:\n  pitch: {least: 2 deg}\nseats:\n");
    for width in [40, 80] {
        for glyphs in [Glyphs::Unicode, Glyphs::Ascii] {
            let text = settings_in(&[limits(TIGHTER), own], Look { width, glyphs, colour: false });
            let widest = text.lines().map(|line| line.chars().count()).max();
            assert!(widest <= Some(width), "{widest:?} of {width}:\n{text}");
            assert!(glyphs == Glyphs::Unicode || text.is_ascii(), "{text}");
        }
    }
}

#[test]
fn hostile_text_cannot_steer_the_terminal() {
    let source = "limits:\n  surfboat:\n    loose: {most: 12, source: \"a\\e[2J\\u202E\"}\npeople:";
    let name = (BOAT, "", "name: Kittiwake", "name: \"K\\e[31m\\nitti\"");
    let text = settings_in(&[limits(source), name], PLAIN);
    assert!(!text.replace('\n', "").contains(is_hidden), "{text}");
    holds(&text, "\\u{1b}[2J");
}
