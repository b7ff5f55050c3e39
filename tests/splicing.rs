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
    let clean = changes.each.iter().all(|change| change.dispute.is_none());
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

const LOG: &str = "\
boat: petrel
defects:
  - found: 2026-10-03
    what: crack at pin 3
    state: watch
  - {found: 2026-10-05, what: loose chock, state: watch}
  - {found: 2026-10-07, what: bow split, state: unfit}
";

#[test]
fn entries_that_ours_put_in_another_order_are_taken_out_by_what_they_say() {
    let (before, entries) = LOG.split_once("  - found").expect("the first entry");
    let (first, rest) = entries.split_once("  - {found: 2026-10-05").expect("the second");
    let (second, third) = rest.split_once("  - {found: 2026-10-07").expect("the third");
    let ours = format!(
        "{before}  - {{found: 2026-10-05{second}  - found{first}  - {{found: 2026-10-07{third}"
    );
    let theirs = format!("{before}  - {{found: 2026-10-07{third}");
    assert_eq!(splice(LOG, &ours, &theirs), (theirs, true));
}

#[test]
fn an_entry_of_a_log_is_never_put_together_from_two_sides() {
    let ours = LOG.replace(
        "    state: watch\n",
        "    state: watch\n    put-right: {date: 2026-10-10, by: Ines Marlow, how: new pin}\n",
    );
    let theirs =
        LOG.replace("crack at pin 3\n    state: watch", "crack at pin 2\n    state: unfit");
    let (text, clean) = splice(LOG, &ours, &theirs);
    assert!(!clean, "{text}");
    let (_, marked) = text.split_once("<<<<<<< ours\n").expect("a conflict");
    let (own, other) = marked.split_once("=======\n").expect("both forms");
    assert!(own.contains("crack at pin 3") && own.contains("put-right"), "{text}");
    assert!(other.contains("crack at pin 2") && !other.contains("put-right"), "{text}");
}

#[test]
fn a_waiver_is_known_by_its_finding_and_its_rule() {
    let waiver = |rule: &str, until: &str, because: &str| {
        format!(
            "- {{finding: a/seat-1, rule: {rule}, because: {because}, by: X, until: {until}}}\n"
        )
    };
    let base = waiver("one", "2026-12-31", "so");
    let ours = waiver("one", "2027-01-10", "so");
    let theirs = waiver("other", "2026-12-31", "not so");
    let (text, clean) = splice(&base, &ours, &theirs);
    assert!(!clean, "{text}");
    assert!(!text.contains(&waiver("other", "2027-01-10", "not so")), "{text}");
}

#[test]
fn a_signature_is_taken_from_one_side() {
    let ours = BASE.replace("date: 2026-10-17", "date: 2026-10-24");
    let theirs = BASE
        .replace("date: 2026-10-17", "date: 2026-10-25")
        .replace("by: Ines Marlow", "by: Tomas Reyne");
    let (text, clean) = splice(BASE, &ours, &theirs);
    assert!(!clean);
    let marked = "<<<<<<< ours\n  date: 2026-10-24\n  by: Ines Marlow\n=======\n  date: 2026-10-25\n  by: Tomas Reyne\n>>>>>>> theirs\n";
    assert!(text.contains(marked), "{text}");
}

#[test]
fn a_reading_is_not_given_the_day_of_the_other_side() {
    let rigged_anew = BASE.replace("date: 2026-10-17", "date: 2026-10-24").replace("58", "59");
    let read = BASE.replacen("seat-mark: 61", "seat-mark: 60", 1);
    for (ours, theirs) in [(&rigged_anew, &read), (&read, &rigged_anew)] {
        let (text, clean) = splice(BASE, ours, theirs);
        assert!(!clean, "{text}");
    }
    let knock = BASE
        .replace("  - {date: 2026-10-18", "  - {date: 2026-10-20, what: x}\n  - {date: 2026-10-18");
    let (text, clean) = splice(BASE, &rigged_anew, &knock);
    assert!(clean, "a knock has a day of its own: {text}");
    let both = read.replace("date: 2026-10-17", "date: 2026-10-24");
    let (text, clean) = splice(BASE, &rigged_anew, &both);
    assert!(clean, "both were there on that day: {text}");
}

#[test]
fn a_text_of_many_lines_comes_as_it_was_written() {
    let ours = BASE.replace("57.5", "57");
    let theirs = BASE.replace("rigged:", "x-story: |\n  once\n    upon\n  a time\nrigged:");
    let (text, clean) = splice(BASE, &ours, &theirs);
    assert!(clean);
    assert!(
        text.contains("x-story:") && says(&text) == says(&theirs.replace("57.5", "57")),
        "{text}"
    );
}

/// One side of a log: what becomes of each entry of the base, in which order, and what is added.
#[derive(Clone, Debug)]
struct Side {
    order: Vec<usize>,
    kept: Vec<Option<u8>>,
    added: Vec<u8>,
}

fn side() -> impl Strategy<Value = Side> {
    let order = Just((0..5).collect::<Vec<usize>>()).prop_shuffle();
    let kept = prop::collection::vec(prop::option::weighted(0.75, 0..3_u8), 5);
    let added = prop::collection::vec(10..14_u8, 0..3);
    (order, kept, added).prop_map(|(order, kept, added)| Side { order, kept, added })
}

/// Returns the log of a side: entry `n` is of day n; its `what` is 0 where it was not changed.
fn log(side: &Side) -> String {
    let entry =
        |day: usize, what: u8| format!("  - {{date: 2026-01-{:02}, what: w{what}}}\n", day + 1);
    let kept = side.order.iter().filter_map(|at| Some(entry(*at, side.kept[*at]?)));
    let added = side.added.iter().map(|new| entry(usize::from(*new), *new));
    let all: String = kept.chain(added).collect();
    format!("boat: petrel\nknocks:\n{}", if all.is_empty() { "  []\n".to_owned() } else { all })
}

fn entries(text: &str) -> Vec<String> {
    let mut all: Vec<String> =
        text.lines().filter_map(|line| line.trim().strip_prefix("- ")).map(str::to_owned).collect();
    all.sort();
    all
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

    /// Every entry of a log is what the one side that touched it made of it, whatever their order.
    #[test]
    fn each_entry_of_a_log_is_joined_by_itself(ours in side(), theirs in side()) {
        let base = Side { order: (0..5).collect(), kept: vec![Some(0); 5], added: Vec::new() };
        let (base, our_text, their_text) = (log(&base), log(&ours), log(&theirs));
        let disputed = ours.kept.iter().zip(&theirs.kept).any(|(one, other)| {
            one != other && *one != Some(0) && *other != Some(0)
        });
        let (text, clean) = splice(&base, &our_text, &their_text);
        prop_assert_eq!(clean, !disputed, "{}", text);
        if clean {
            let kept = ours.kept.iter().zip(&theirs.kept);
            let kept = kept.map(|(one, other)| if *one == Some(0) { *other } else { *one });
            let twice = |new: &u8| ours.added.contains(new);
            let both = Side {
                order: (0..5).collect(),
                kept: kept.collect(),
                added: ours.added.iter().chain(theirs.added.iter().filter(|new| !twice(new))).copied().collect(),
            };
            let mut expected = entries(&log(&both));
            let mut got = entries(&text);
            expected.dedup();
            got.dedup();
            prop_assert_eq!(got, expected);
        }
    }
}
