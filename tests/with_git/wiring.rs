//! git told to compare and merge records by value, and what it then does.

use std::fs;
use std::path::PathBuf;
use std::process::Command;

use crate::git::done;
use crate::git::run;
use crate::guard::club::BOAT;
use crate::guard::club::Club;
use crate::guard::club::PROGRAM;
use crate::guard::club::edit;
use crate::guard::club::program;
use crate::guard::club::said;

/// A club whose git was told by this program.
fn wired() -> Club {
    let club = Club::new();
    let output = program(&club.folder, &["wire"], "");
    assert!(output.status.success(), "{}", said(&output));
    club.committed("wired");
    club
}

/// Has each of two branches make a change, and merges the one into the other.
fn merged(club: &Club, theirs: impl Fn(&Club), ours: impl Fn(&Club)) -> (bool, String, String) {
    done(&club.folder, &["switch", "--quiet", "--create", "theirs"]);
    theirs(club);
    club.committed("theirs");
    done(&club.folder, &["switch", "--quiet", "main"]);
    ours(club);
    club.committed("ours");
    let output = run(&club.folder, &["merge", "--no-edit", "theirs"]);
    let text = fs::read_to_string(club.folder.join(BOAT)).expect("the boat");
    (output.status.success(), text, said(&output))
}

fn pitch(club: &Club, seat: &str, offset: &str, pitch: &str) {
    let offsets = format!("{{catch: {offset}, square: {offset}, finish: {offset}}}");
    edit(&club.folder, BOAT, seat, "{catch: 11, square: 11, finish: 11}", &offsets);
    edit(&club.folder, BOAT, "rigged", "date: 2026-10-17", "date: 2026-10-24");
    edit(&club.folder, BOAT, seat, "pitch: 3.58 deg", &format!("pitch: {pitch} deg"));
}

#[test]
#[ignore = "needs git"]
fn different_fields_of_one_line_merge() {
    let club = wired();
    let plate = "{along: 100, across: 80}";
    let (went, text, said) = merged(
        &club,
        |club| edit(&club.folder, BOAT, "seat: 1", plate, "{along: 102, across: 80}"),
        |club| edit(&club.folder, BOAT, "seat: 1", plate, "{along: 100, across: 82}"),
    );
    assert!(went, "{said}");
    assert_eq!(text.matches("plate: {along: 102, across: 82}").count(), 1, "{text}");
}

#[test]
#[ignore = "needs git"]
fn one_field_changed_twice_is_in_conflict_around_it_only() {
    let club = wired();
    let (went, text, said) = merged(
        &club,
        |club| {
            edit(&club.folder, BOAT, "seat: 1", "seat-mark: 61", "seat-mark: 62");
            edit(&club.folder, BOAT, "seat: 1", "chock-to-pin: 600", "chock-to-pin: 602");
        },
        |club| edit(&club.folder, BOAT, "seat: 1", "seat-mark: 61", "seat-mark: 60"),
    );
    assert!(!went && said.contains("both sides changed seat-1/seat-mark"), "{said}");
    let conflict = "<<<<<<< ours\n    seat-mark: 60\n=======\n    seat-mark: 62\n>>>>>>> theirs\n";
    assert!(text.contains(conflict), "{text}");
    assert!(text.contains("    chock-to-pin: 602\n"), "{text}");
    assert_eq!(text.matches("<<<<<<<").count(), 1, "{text}");
}

#[test]
#[ignore = "needs git"]
fn two_sides_that_are_sound_alone_and_not_together_stay_in_conflict() {
    let club = wired();
    let lints = |club: &Club| {
        let output = program(&club.folder, &["lint", "--format", "brief"], "");
        assert!(!said(&output).contains("pitch-mismatch: fault"), "{}", said(&output));
        assert!(output.status.success(), "{}", said(&output));
    };
    let (went, text, said) = merged(
        &club,
        |club| {
            pitch(club, "seat: 1", "12.5", "4.07");
            lints(club);
        },
        |club| {
            pitch(club, "seat: 2", "9.5", "3.09");
            lints(club);
        },
    );
    assert!(!went && said.contains("does not fit together: kittiwake pitch-mismatch"), "{said}");
    assert!(
        text.contains("<<<<<<< ours\n# does not fit together: kittiwake pitch-mismatch"),
        "{text}"
    );
    assert!(text.contains("pitch: {catch: 9.5, square: 9.5, finish: 9.5}"), "{text}");
}

#[test]
#[ignore = "needs git"]
fn differences_show_values_and_no_layout() {
    let club = wired();
    let text = fs::read_to_string(club.folder.join(BOAT)).expect("the boat");
    let indented = text.replace("\n    ", "\n      ").replace("\n  - seat", "\n    - seat");
    let changed = indented.replacen("seat-mark: 61", "seat-mark: 6.2 cm", 1);
    fs::write(club.folder.join(BOAT), changed).expect("the boat");
    let shown = done(&club.folder, &["diff", "--unified=0", "--no-color"]);
    let lines: Vec<&str> =
        shown.lines().filter(|line| line.starts_with(['+', '-'])).skip(2).collect();
    assert_eq!(lines, ["-kittiwake/seat-1/seat-mark: 61 mm", "+kittiwake/seat-1/seat-mark: 62 mm"]);
}

/// Wires a club with a copy of the program, and takes the copy away.
fn wired_by_a_program_that_is_gone() -> Club {
    let club = Club::new();
    let copy: PathBuf = club.yard.folder.join("tholebook copy");
    fs::copy(PROGRAM, &copy).expect("a copy");
    let wire = Command::new(&copy).arg("wire").current_dir(&club.folder).output();
    assert!(wire.expect("it runs").status.success());
    club.committed("wired");
    fs::remove_file(copy).expect("it was there");
    club
}

#[test]
#[ignore = "needs git"]
fn with_the_program_gone_git_works_by_lines() {
    let club = wired_by_a_program_that_is_gone();
    let (went, text, said) = merged(
        &club,
        |club| edit(&club.folder, BOAT, "seat: 1", "seat-mark: 61", "seat-mark: 62"),
        |club| edit(&club.folder, BOAT, "seat: 2", "seat-mark: 61", "seat-mark: 60"),
    );
    assert!(went, "{said}");
    assert!(text.contains("seat-mark: 62") && text.contains("seat-mark: 60"), "{text}");
    let shown = done(&club.folder, &["log", "-p", "--no-color"]);
    assert!(shown.contains("+    seat-mark: 62"), "{shown}");
    edit(&club.folder, BOAT, "seat: 1", "seat-mark: 62", "seat-mark: 63");
    let shown = done(&club.folder, &["diff", "--no-color"]);
    assert!(shown.contains("+    seat-mark: 63"), "{shown}");
}

#[test]
#[ignore = "needs git"]
fn with_the_program_gone_a_conflict_is_one_of_lines() {
    let club = wired_by_a_program_that_is_gone();
    let (went, text, said) = merged(
        &club,
        |club| edit(&club.folder, BOAT, "seat: 1", "seat-mark: 61", "seat-mark: 62"),
        |club| edit(&club.folder, BOAT, "seat: 1", "seat-mark: 61", "seat-mark: 60"),
    );
    assert!(!went, "{said}");
    assert!(text.contains("<<<<<<< ours\n    seat-mark: 60\n=======\n"), "{text}");
}

#[test]
#[ignore = "needs git"]
fn a_text_that_no_program_can_read_is_merged_by_lines_and_looked_at() {
    let club = wired();
    let (went, text, said) = merged(
        &club,
        |club| edit(&club.folder, BOAT, "seat: 1", "side: starboard", "side: [starboard"),
        |club| edit(&club.folder, BOAT, "seat: 2", "seat-mark: 61", "seat-mark: 60"),
    );
    assert!(!went && said.contains("theirs has a fault in line"), "{said}");
    assert!(said.contains("there are no marks in it"), "{said}");
    assert!(text.contains("side: [starboard") && text.contains("seat-mark: 60"), "{text}");
}

#[test]
#[ignore = "needs git"]
fn bytes_that_are_no_text_are_merged_by_lines_with_marks() {
    let club = wired();
    let by_bytes = |club: &Club, mark: u8| {
        let file = club.folder.join(BOAT);
        let bytes = fs::read(&file).expect("the boat");
        fs::write(&file, [b"# ".as_slice(), &[mark], b"\n", &bytes].concat()).expect("the boat");
    };
    let (went, text, said) = {
        done(&club.folder, &["switch", "--quiet", "--create", "theirs"]);
        by_bytes(&club, 0xe9);
        club.committed("theirs");
        done(&club.folder, &["switch", "--quiet", "main"]);
        by_bytes(&club, b'e');
        club.committed("ours");
        let output = run(&club.folder, &["merge", "--no-edit", "theirs"]);
        let bytes = fs::read(club.folder.join(BOAT)).expect("the boat");
        (output.status.success(), String::from_utf8_lossy(&bytes).into_owned(), said(&output))
    };
    assert!(!went && said.contains("theirs is not UTF-8"), "{said}");
    assert!(text.contains("<<<<<<< ours\n# e\n=======\n# \u{fffd}\n>>>>>>> theirs"), "{text}");
}

#[test]
#[ignore = "needs git"]
fn what_was_wired_is_checked_and_undone() {
    let club = Club::new();
    let before = fs::read_to_string(club.folder.join(".git/config")).expect("the settings");
    let check = || program(&club.folder, &["wire", "--check"], "");
    assert_eq!(check().status.code(), Some(1), "{}", said(&check()));
    let first = said(&program(&club.folder, &["wire"], ""));
    assert_eq!(said(&program(&club.folder, &["wire"], "")), first);
    assert_eq!(check().status.code(), Some(0), "{}", said(&check()));
    done(&club.folder, &["config", "merge.tholebook.driver", "true"]);
    assert!(said(&check()).contains("something else is set"), "{}", said(&check()));
    let undone = program(&club.folder, &["unwire"], "");
    assert!(undone.status.success(), "{}", said(&undone));
    assert!(!club.folder.join(".gitattributes").exists());
    let after = fs::read_to_string(club.folder.join(".git/config")).expect("the settings");
    let settings = |text: &str| text.lines().filter(|line| line.contains('=')).count();
    assert_eq!(settings(&after), settings(&before), "{after}");
    let again = said(&program(&club.folder, &["unwire"], ""));
    assert_eq!(again, "Nothing was wired here.\n");
}
