//! Two changed texts of one record are made one, field by field.

use proptest::prelude::*;
use tholebook::reading::tree;
use tholebook::writing::editing::Meaning;
use tholebook::writing::splicing::Labels;
use tholebook::writing::splicing::Sides;
use tholebook::writing::splicing::changes;
use tholebook::writing::splicing::joined;

const BASE: &str = "\
boat: petrel
rigged:
  date: 2026-10-17
  by: Ines Marlow
seats:
  - seat: 1
    rowlock: {gap: 58, long: 38} # re-bent
    seat-mark: 61
  - seat: 2
    rowlock: {gap: 57.5, long: 38}
    seat-mark: 61
knocks:
  - {date: 2026-10-18, what: rolled in the shore break}
";

const LABELS: Labels<'static> = Labels { ours: "ours", theirs: "theirs", size: 7 };

/// Returns the joined text, and whether nothing was disputed.
fn splice(base: &str, ours: &str, theirs: &str) -> (String, bool) {
    let sides = Sides { base, ours, theirs };
    let changes = changes(&sides).expect("no faults");
    let clean = changes.iter().all(|change| !change.disputed);
    (joined(&sides, &changes, &LABELS, &[]).expect("every change can be made"), clean)
}

fn says(text: &str) -> Meaning {
    Meaning::of(&tree::read(text).root.expect("a record")).settled()
}

#[test]
fn different_fields_of_one_line_are_joined() {
    let ours = BASE.replace("gap: 58,", "gap: 57,");
    let theirs = BASE.replace("{gap: 58, long: 38}", "{gap: 58, long: 40, horn: 62}");
    let (text, clean) = splice(BASE, &ours, &theirs);
    assert!(clean);
    assert_eq!(text, BASE.replace("{gap: 58, long: 38}", "{gap: 57, long: 40, horn: 62}"));
}

#[test]
fn one_field_changed_by_both_is_in_conflict_and_no_other() {
    let ours = BASE.replace("gap: 58,", "gap: 57,");
    let theirs = BASE.replace("{gap: 58, long: 38}", "{gap: 56, long: 40}");
    let (text, clean) = splice(BASE, &ours, &theirs);
    assert!(!clean);
    let conflict = "\
<<<<<<< ours
    rowlock: {gap: 57, long: 40} # re-bent
=======
    rowlock: {gap: 56, long: 40} # re-bent
>>>>>>> theirs
";
    assert_eq!(text, BASE.replace("    rowlock: {gap: 58, long: 38} # re-bent\n", conflict));
}

#[test]
fn the_same_change_on_both_sides_is_made_once() {
    let both = BASE.replace("gap: 58,", "gap: 57,");
    assert_eq!(splice(BASE, &both, &both), (both.clone(), true));
    let finer = BASE.replace("gap: 58,", "gap: 57.0,");
    assert_eq!(splice(BASE, &both, &finer), (both, true));
}

#[test]
fn a_number_only_written_otherwise_is_no_change() {
    let measured = BASE.replace("gap: 57.5", "gap: 57");
    let finer = BASE.replace("gap: 57.5", "gap: 57.50");
    assert_eq!(splice(BASE, &measured, &finer), (measured.clone(), true));
    assert_eq!(splice(BASE, &finer, &measured), (measured, true));
}

#[test]
fn what_both_add_to_a_log_is_kept() {
    let ours = format!("{BASE}  - {{date: 2026-11-02, what: fell off the trailer}}\n");
    let theirs = format!("{BASE}  - {{date: 2026-11-02, what: hit the pier}}\n");
    let (text, clean) = splice(BASE, &ours, &theirs);
    assert!(clean);
    assert_eq!(text, format!("{ours}  - {{date: 2026-11-02, what: hit the pier}}\n"));
    assert_eq!(splice(BASE, &ours, &ours), (ours.clone(), true));
}

#[test]
fn what_one_side_takes_away_goes_unless_the_other_changed_it() {
    let without = BASE.replace("    seat-mark: 61\n  - seat: 2", "  - seat: 2");
    assert_eq!(splice(BASE, BASE, &without), (without.clone(), true));
    let changed = BASE.replacen("seat-mark: 61", "seat-mark: 60", 1);
    let (text, clean) = splice(BASE, &changed, &without);
    assert!(!clean);
    assert!(text.contains("    seat-mark: 60\n=======\n>>>>>>> theirs\n"), "{text}");
    let (text, clean) = splice(BASE, &without, &changed);
    assert!(!clean);
    assert!(text.contains("<<<<<<< ours\n=======\n    seat-mark: 60\n"), "{text}");
}

#[test]
fn a_seat_keeps_its_name_wherever_it_stands() {
    let (before, first) = BASE.split_once("  - seat: 1").expect("seat 1");
    let (first, rest) = first.split_once("  - seat: 2").expect("seat 2");
    let (second, knocks) = rest.split_once("knocks:").expect("knocks");
    let turned = format!("{before}  - seat: 2{second}  - seat: 1{first}knocks:{knocks}");
    let ours = turned.replace("gap: 57.5", "gap: 57");
    let theirs = BASE.replace("gap: 58,", "gap: 59,");
    let (text, clean) = splice(BASE, &ours, &theirs);
    assert!(clean);
    assert_eq!(text, ours.replace("gap: 58,", "gap: 59,"));
}

#[test]
fn a_comment_of_theirs_is_never_lost() {
    let theirs =
        BASE.replace("by: Ines Marlow", "by: Ines Marlow # in the rain").replace("57.5", "57");
    let ours = BASE.replace("gap: 58,", "gap: 59,");
    let (text, clean) = splice(BASE, &ours, &theirs);
    assert!(clean);
    assert!(
        text.ends_with("# From the other side; put it where it belongs:\n# in the rain\n"),
        "{text}"
    );
}

#[test]
fn a_record_that_both_sides_wrote_anew_is_joined() {
    let ours = "boat: petrel\noars: long-ash\n";
    let theirs = "boat: petrel\nclass: surfboat\n";
    let (text, clean) = splice("", ours, theirs);
    assert!(clean);
    assert_eq!(text, "boat: petrel\noars: long-ash\nclass: surfboat\n");
}

#[test]
fn a_text_with_a_fault_is_refused() {
    let broken = "boat: [petrel\n";
    for [base, ours, theirs] in [[broken, BASE, BASE], [BASE, broken, BASE], [BASE, BASE, broken]] {
        changes(&Sides { base, ours, theirs }).expect_err("a fault");
    }
}

/// Sets some of the figures of a text anew: each is `gap: N` with its own place.
fn turned(text: &str, choices: &[Option<u8>]) -> String {
    let mut choices = choices.iter();
    let figures =
        ["gap: 58,", "long: 38} #", "seat-mark: 61\n  -", "gap: 57.5", "seat-mark: 61\nk"];
    figures.iter().fold(text.to_owned(), |text, figure| match choices.next() {
        Some(Some(new)) => {
            let (key, rest) = figure.split_once(": ").expect("a key");
            let end = rest.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(rest.len());
            text.replacen(figure, &format!("{key}: {new}{}", &rest[end..]), 1)
        }
        _ => text,
    })
}

proptest! {
    /// The merge of two sides is what each figure says by itself, either way round.
    #[test]
    fn each_figure_is_joined_by_itself(
        ours in prop::collection::vec(prop::option::of(1..9_u8), 5),
        theirs in prop::collection::vec(prop::option::of(1..9_u8), 5),
    ) {
        let (our_text, their_text) = (turned(BASE, &ours), turned(BASE, &theirs));
        let (text, clean) = splice(BASE, &our_text, &their_text);
        let disputed = ours.iter().zip(&theirs).any(|pair| {
            matches!(pair, (Some(one), Some(other)) if one != other)
        });
        prop_assert_eq!(clean, !disputed);
        if clean {
            let both: Vec<Option<u8>> =
                ours.iter().zip(&theirs).map(|(one, other)| one.or(*other)).collect();
            prop_assert_eq!(&text, &turned(BASE, &both));
            let (other_way, _) = splice(BASE, &their_text, &our_text);
            prop_assert_eq!(says(&other_way), says(&text));
        } else {
            prop_assert!(text.contains("<<<<<<< ours") && text.contains(">>>>>>> theirs"));
        }
    }
}
