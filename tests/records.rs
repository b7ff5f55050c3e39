//! Records, references and defects: what the examples of the rules do not show.

mod sound_book;

use sound_book::SoundBook;
use tholebook::rules::Checked;
use tholebook::rules::Edit;
use tholebook::rules::Finding;
use tholebook::rules::Level;

const BOAT: &str = "boats/kittiwake.yaml";
const OARS: &str = "oars/long-ash.yaml";

fn of_rule(checked: &Checked, rule: &str) -> Vec<Finding> {
    checked.findings.iter().filter(|finding| finding.rule.id == rule).cloned().collect()
}

fn found(edits: &[Edit], rule: &str) -> Vec<Finding> {
    of_rule(&SoundBook::with(edits).check().1, rule)
}

#[test]
fn a_class_of_the_programs_own_is_named_second_never_first() {
    let edits = [("classes/own.yaml", "", "", "class: surfboat\nseats: 4\n")];
    let (book, checked) = SoundBook::with(&edits).check();
    let twice = of_rule(&checked, "record-twice");
    assert_eq!(twice.len(), 1);
    let files: Vec<bool> =
        twice[0].labels.iter().map(|label| book.file(label.place.file).built_in).collect();
    assert_eq!(files, [false, true]);
}

#[test]
fn three_records_of_one_id_are_two_findings_against_the_first() {
    let edits = [
        ("crews/b.yaml", "", "", "crew: heron\n"),
        ("crews/c.yaml", "", "", "crew: heron\n"),
        ("crews/d.yaml", "", "", "crew: heron\n"),
    ];
    let twice = found(&edits, "record-twice");
    assert_eq!(twice.len(), 2);
    assert_eq!(twice[0].labels[1], twice[1].labels[1]);
}

#[test]
fn a_boat_and_a_crew_may_have_one_id() {
    assert!(found(&[("crews/b.yaml", "", "", "crew: kittiwake\n")], "record-twice").is_empty());
}

#[test]
fn an_open_defect_is_a_danger_and_one_to_be_watched_a_note() {
    for (state, level) in [("unfit", Level::Danger), ("watch", Level::Note)] {
        let defect =
            format!("defects:\n  - {{found: 2026-10-03, what: crack, state: {state}}}\nseats:\n");
        let mut book = SoundBook::new();
        book.edit(BOAT, "", "seats:\n", &defect);
        let open = of_rule(&book.check().1, "defect-open");
        assert_eq!(open.iter().map(|open| open.level).collect::<Vec<_>>(), [level]);
        assert_eq!(open[0].name.as_str(), "kittiwake/defects/2026-10-03");
    }
}

#[test]
fn a_defect_is_open_until_the_last_part_of_put_right_is_there_and_the_parts_are_named() {
    let parts = ["date: 2026-10-10", "by: Ines Marlow", "how: new pin", "passed-by: Tomas Reyne"];
    let open = |put_right: &str| {
        let defect = format!(
            "defects:\n  - {{found: 2026-10-03, what: crack, state: unfit, put-right: {{{put_right}}}}}\nseats:\n"
        );
        let mut book = SoundBook::new();
        book.edit(BOAT, "", "seats:\n", &defect);
        of_rule(&book.check().1, "defect-open")
    };
    assert!(open(&parts.join(", ")).is_empty());
    for left_out in 0..parts.len() {
        let mut some = parts.to_vec();
        let key = some.remove(left_out).split(':').next().expect("a key").to_owned();
        let open = open(&some.join(", "));
        assert_eq!(open.len(), 1, "without {key}");
        assert_eq!(open[0].level, Level::Danger);
        assert!(open[0].message.ends_with(&format!("not said: {key}")), "{}", open[0].message);
    }
    assert_eq!(open(&parts.join(", ").replace("new pin", "' '")).len(), 1, "blanks say nothing");
    let same = open(&parts.join(", ").replace("Tomas Reyne", "ines marlow"));
    assert!(same[0].message.contains("not by a second person"), "{}", same[0].message);
}

#[test]
fn a_defect_of_an_oar_only_boats_out_of_use_carry_is_shown_and_stops_nothing() {
    let split = "state: sound\n    defects: [{found: 2026-10-03, what: split, state: unfit}]";
    let oar: Edit = (OARS, "oar: A2", "state: sound", split);
    let carried = found(&[oar], "defect-open");
    assert_eq!(carried.len(), 1);
    assert!(!carried[0].shown_only);
    assert_eq!(carried[0].name.as_str(), "long-ash/A2/defects/2026-10-03");
    let ashore: Edit = (
        BOAT,
        "",
        "seats:\n",
        "out-of-use: {since: 2026-10-20, by: I.M., because: hull}\nseats:\n",
    );
    assert!(found(&[oar, ashore], "defect-open")[0].shown_only);
}

#[test]
fn a_defect_whose_state_cannot_be_read_is_a_danger() {
    let mut book = SoundBook::new();
    book.edit(
        BOAT,
        "",
        "seats:\n",
        "defects:\n  - {found: 2026-10-03, what: crack, state: bad}\nseats:\n",
    );
    assert_eq!(of_rule(&book.check().1, "defect-open")[0].level, Level::Danger);
}

#[test]
fn two_boats_with_one_set_are_a_note_only_when_rigged_on_one_day() {
    for (day, count) in [("2026-10-17", 1), ("2026-10-18", 0)] {
        let petrel = format!(
            "boat: petrel\nclass: surfboat\noars: long-ash\nrigged: {{date: {day}, by: I.M.}}\n"
        );
        let mut book = SoundBook::new();
        book.edit("boats/petrel.yaml", "", "", &petrel);
        let twice = of_rule(&book.check().1, "oar-twice");
        assert_eq!(twice.len(), count, "{day}");
        for twice in twice {
            assert_eq!((twice.level, twice.name.as_str()), (Level::Note, "petrel/oars"));
            assert_eq!(twice.labels.len(), 2);
        }
    }
}

#[test]
fn an_unread_value_is_told_once_and_is_not_also_called_not_measured() {
    let edits = [(BOAT, "seat: 2", "seat-mark: 61", "seat-mark: sixty")];
    let (_, checked) = SoundBook::with(&edits).check();
    assert_eq!(of_rule(&checked, "not-a-number").len(), 1);
    assert!(of_rule(&checked, "not-measured").is_empty());
}

#[test]
fn a_seat_whose_number_cannot_be_read_may_be_the_one_that_seems_to_be_missing() {
    let edits = [(BOAT, "", "- seat: 4", "- seat: four")];
    assert!(found(&edits, "seats-wrong").is_empty());
    assert_eq!(found(&edits, "not-a-number").len(), 1);
}

#[test]
fn a_value_read_again_may_be_named_by_a_section_or_a_star() {
    let again = |value: &str| {
        let text = format!(
            "read-again:\n  - {{date: 2026-10-24, by: Tomas Reyne, checked-by: Ines Marlow, values: ['{value}']}}\nseats:\n"
        );
        let mut book = SoundBook::new();
        book.edit(BOAT, "", "seats:\n", &text);
        of_rule(&book.check().1, "no-such-record").len()
    };
    for there in
        ["seat-2/rowlock/gap", "seat-2/rowlock", "seat-2", "*/pitch/square", "seat-1/oar-bed"]
    {
        assert_eq!(again(there), 0, "{there}");
    }
    for nowhere in
        ["seat-7/rowlock/gap", "rowlock/gap", "seat-2/rowlock/gap/read/x", "", "kittiwake/seat-2"]
    {
        assert_eq!(again(nowhere), 1, "{nowhere}");
    }
}

/// What could hide a danger is itself told, and never counts as clear.
mod what_could_hide_a_danger {
    use super::sound_book::SoundBook;
    use tholebook::rules::Checked;
    use tholebook::rules::Edit;
    use tholebook::rules::Level;

    const BOAT: &str = "boats/kittiwake.yaml";
    const OARS: &str = "oars/long-ash.yaml";
    const SHAFT: &str = "{widest: 52, narrowest: 46, bears: flat, leather: wet}";

    fn checked(edits: &[Edit]) -> Checked {
        SoundBook::with(edits).check().1
    }

    fn has(checked: &Checked, rule: &str) -> bool {
        checked.findings.iter().any(|finding| finding.rule.id == rule)
    }

    /// 54 - 52 = 2 mm: too tight, whichever way round the sections were written down.
    #[test]
    fn sections_written_the_wrong_way_round_clear_no_oar() {
        for shaft in [
            "{widest: 46, narrowest: 52, bears: flat, leather: wet}",
            "{widest: 46, narrowest: 44, round: 52, bears: flat, leather: wet}",
        ] {
            let checked = checked(&[
                (OARS, "oar: A1", SHAFT, shaft),
                (BOAT, "seat: 1", "gap: 60", "gap: 54"),
            ]);
            assert!(has(&checked, "out-of-bounds"), "{shaft}");
            assert!(has(&checked, "gap-not-measured"), "{shaft}");
            assert_eq!(checked.worst(), Some(Level::Danger), "{shaft}");
        }
    }

    #[test]
    fn a_shaft_measured_dry_clears_nothing() {
        let dry = "{widest: 52, narrowest: 46, bears: flat, leather: dry}";
        let checked = checked(&[(OARS, "oar: A1", SHAFT, dry)]);
        let finding = checked.findings.iter().find(|f| f.rule.id == "gap-not-measured");
        assert!(finding.expect("a danger").message.contains("leather dry"));
    }

    #[test]
    fn a_clearance_below_nothing_is_no_limit() {
        let checked = checked(&[
            (
                "club.yaml",
                "",
                "people:",
                "limits:\n  surfboat:\n    clearance: {least: -10}\npeople:",
            ),
            (BOAT, "seat: 1", "gap: 60", "gap: 45"),
        ]);
        assert!(has(&checked, "out-of-bounds") && has(&checked, "gap-too-tight"));
    }

    #[test]
    fn a_boat_is_out_of_use_only_when_it_is_said_since_when_by_whom_and_why() {
        for entry in [
            "out-of-use: {}\n",
            "out-of-use: {since: 2026-10-03, by: Ines Marlow}\n",
            "out-of-use: {since: 2026-10-03, by: Ines Marlow, because: \"\"}\n",
            "out-of-use: {since: 2099-01-01, by: Ines Marlow, because: cracked pin}\n",
        ] {
            let entry = format!("{entry}seats:\n").leak();
            let checked =
                checked(&[(BOAT, "", "seats:\n", entry), (BOAT, "seat: 1", "gap: 60", "gap: 45")]);
            assert_eq!(checked.worst(), Some(Level::Danger), "{entry}");
        }
    }

    #[test]
    fn who_may_not_take_a_boat_out_of_use_stops_the_book() {
        let entry =
            "out-of-use: {since: 2026-10-03, by: Nobody Known, because: cracked pin}\nseats:\n";
        let checked = checked(&[(BOAT, "", "seats:\n", entry)]);
        assert_eq!(checked.worst(), Some(Level::Fault));
    }

    #[test]
    fn readings_that_cant_be_are_faults_and_not_merely_unchecked() {
        let wide = "pitch: {catch: 11, square: 200, finish: 11}";
        let edits = [(BOAT, "seat: 1", "pitch: {catch: 11, square: 11, finish: 11}", wide)];
        assert!(has(&checked(&edits), "pitch-out-of-range"));
        let round = "{round: 48, bears: round}";
        let edits = [
            (OARS, "oar: A1", SHAFT, round),
            (BOAT, "seat: 1", "seat-mark: 61", "seat-mark: 61\n    oar-bed: 70"),
        ];
        assert!(has(&checked(&edits), "bed-wrong"));
    }

    #[test]
    fn a_boat_whose_id_cant_be_read_is_looked_at_all_the_same() {
        let checked = checked(&[
            (BOAT, "", "boat: kittiwake", "boat: no"),
            (BOAT, "seat: 1", "gap: 60", "gap: 45"),
        ]);
        assert!(has(&checked, "wrong-id") && has(&checked, "gap-too-tight"));
    }
}
