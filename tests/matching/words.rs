//! The words: what can go where is seen at once, at any width, whatever a file holds.

use tholebook::reports;
use tholebook::reports::Glyphs;
use tholebook::reports::Look;
use tholebook::reports::shown::is_hidden;

use crate::tries::BOAT;
use crate::tries::Change;
use crate::tries::OARS;
use crate::tries::changed;
use crate::tries::lacks;
use crate::tries::matches;
use crate::tries::read;

const PLAIN: Look = Look { width: 80, glyphs: Glyphs::Unicode, colour: false };

/// In short, and seat by seat.
fn told(edits: &[Change], look: Look) -> [String; 2] {
    let book = read(&changed(edits));
    let (matches, lacks) = (matches(&book), lacks(&book));
    [
        reports::matching_text(&matches, &lacks, look),
        reports::matching_seats(&matches, &lacks, look),
    ]
}

#[track_caller]
fn holds(text: &str, part: &str) {
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains(part), "no {part:?} in:\n{text}");
}

#[test]
fn which_oars_go_where_is_said_seat_by_seat_and_the_worst_comes_first() {
    let edits = [
        (BOAT, "seat: 1", "gap: 60", "gap: 55"),
        (BOAT, "seat: 2", "gap: 60", "gap: 57.2"),
        (BOAT, "seat: 4", "gap: 60", "gap: 64"),
        (OARS, "oar: A5", "widest: 52", "widest: 53.5"),
    ];
    let [short, seats] = told(&edits, PLAIN);
    holds(
        &short,
        "long-ash (hers; spare A5): tight, every oar in seats 1, 2: at worst (seat 1, A5) \
         clearance 1.5 ± 0.3 mm, 3.5 mm short of 5 mm",
    );
    holds(
        &short,
        "loose, every oar in seat 4: at worst (seat 4, A1) looseness 18.0 ± 0.3 mm, 3.0 mm over 15 mm",
    );
    holds(&short, "clears, every oar in seat 3: the least clearance 6.5 ± 0.3 mm (at least 5 mm)");
    holds(
        &seats,
        "tight, A1, A2, A3, A4 in seat 1: clearance 3.0 ± 0.3 mm, 2.0 mm short of 5 mm in a roll",
    );
    holds(
        &seats,
        "tight?, A1, A2, A3, A4 in seat 2: clearance 5.2 ± 0.3 mm, too close to call (at least 5 mm)",
    );
    let order = [
        "tight, A5 in seat 1",
        "tight, A1",
        "tight, A5 in seat 2",
        "tight?, A1",
        "loose, A1",
        "clears, A5",
    ];
    let places: Vec<Option<usize>> = order.iter().map(|part| seats.find(part)).collect();
    assert!(places.iter().all(Option::is_some) && places.is_sorted(), "{places:?}\n{seats}");
    holds(&seats, "20 tries, one oar in one rowlock each: tight 10, unknown 0, loose 5, clears 5.");
    for text in [short, seats] {
        holds(&text, "Lift every oar out by hand before going afloat.");
    }
}

#[test]
fn an_unfit_oar_is_never_said_to_clear_without_that_word() {
    let defect =
        "defects:\n      - {found: 2026-10-03, what: split, state: unfit}\n    state: sound";
    for (from, to) in [("state: sound", "state: unfit"), ("state: sound", defect)] {
        let [short, seats] = told(&[(OARS, "oar: A3", from, to)], PLAIN);
        holds(&short, "clears, every fit oar in every seat");
        holds(&seats, "clears but unfit, A3 in every seat");
        for text in [short, seats] {
            holds(&text, "A3 of long-ash is unfit: not to be used, whatever it clears.");
        }
    }
}

#[test]
fn what_was_not_tried_or_not_looked_at_is_said() {
    let edits = [
        (BOAT, "", "spares: [A5]", "spares: [A5, A7]"),
        (BOAT, "seat: 2", "turns: free", "turns: not measured"),
        (BOAT, "seat: 3", "after-tip: 3", "after-tip: not measured"),
    ];
    for text in told(&edits, PLAIN) {
        holds(&text, "Unknown: A7, spare of Kittiwake, does not stand in long-ash: not tried.");
        holds(
            &text,
            "Not measured in Kittiwake: rowlock/turns of seat 2, rowlock/after-tip of seat 3;",
        );
    }
    for text in told(&[(BOAT, "", "oars: long-ash", "oars: long-oak")], PLAIN) {
        holds(
            &text,
            "Unknown: Kittiwake carries long-oak, and no such set can be read: not tried.",
        );
    }
    let dry = [(OARS, "oar: A5", "leather: wet", "leather: dry")];
    holds(&told(&dry, PLAIN)[0], "A5/shaft/widest not measured: it was dry, and is thicker wet");
    let handle = [(OARS, "oar: A2", "inboard: 1150", "inboard: 1126")];
    let text = &told(&handle, PLAIN)[1];
    holds(
        text,
        "A2 in every seat: gearing 2.428 ± 0.007; handle past mark 296.7 ± 5.6 mm, outside 305 to 335 mm",
    );
}

#[test]
fn no_line_is_wider_than_asked_for_whatever_the_glyphs() {
    let edits = [
        (BOAT, "seat: 1", "gap: 60", "gap: 55"),
        (OARS, "oar: A5", "state: sound", "state: unfit"),
    ];
    for width in [40, 60, 80, 100] {
        for glyphs in [Glyphs::Unicode, Glyphs::Ascii] {
            for text in told(&edits, Look { width, glyphs, colour: false }) {
                for line in text.lines() {
                    assert!(line.chars().count() <= width, "{width}: {line}");
                }
                assert!(glyphs == Glyphs::Unicode || text.is_ascii(), "{text}");
            }
        }
    }
}

#[test]
fn a_hostile_name_steers_no_terminal_and_makes_no_markup() {
    let edits = [
        (BOAT, "", "name: Kittiwake", "name: \"\\e[2J\\u202E|<b>evil\""),
        (BOAT, "", "spares: [A5]", "spares: [\"\\e[2J\\u200B\"]"),
        (OARS, "", "oar: A5", "oar: \"A5\\e[2J\\u202E|`\""),
    ];
    let book = read(&changed(&edits));
    let (matches, lacks) = (matches(&book), lacks(&book));
    let markdown = reports::matching_markdown(&matches, &lacks);
    let json = reports::matching_json(&matches, &lacks);
    for text in told(&edits, PLAIN).into_iter().chain([markdown.clone(), json.clone()]) {
        assert!(!text.replace('\n', "").contains(is_hidden), "{text:?}");
    }
    assert!(!markdown.contains("<b>"), "{markdown}");
    let rows = markdown.lines().filter(|line| line.starts_with("| "));
    for row in rows {
        assert_eq!(row.replace("\\|", "").matches('|').count(), 8, "{row}");
    }
    let back: serde_json::Value = serde_json::from_str(&json).expect("JSON");
    assert_eq!(back["matches"][0]["boat"], "kittiwake");
}

#[test]
fn colour_changes_no_word() {
    let edits = [(BOAT, "seat: 1", "gap: 60", "gap: 55")];
    let plain = told(&edits, PLAIN);
    let coloured = told(&edits, Look { colour: true, ..PLAIN });
    for (plain, coloured) in plain.iter().zip(&coloured) {
        assert!(coloured.contains('\u{1b}'));
        let mut bare = String::new();
        let mut inside = false;
        for c in coloured.chars() {
            match (inside, c) {
                (false, '\u{1b}') => inside = true,
                (true, 'm') => inside = false,
                (true, _) => {}
                (false, c) => bare.push(c),
            }
        }
        assert_eq!(&bare, plain);
    }
}
