//! `derive --write`: worked-out values beside the readings that give them.

use std::fs;

use crate::run::BOAT;
use crate::run::Club;

/// Takes every worked-out block out of a text.
fn without_sums(text: &str) -> String {
    let kept = text.lines().filter(|line| !line.trim_start().starts_with("worked-out:"));
    kept.map(|line| format!("{line}\n")).collect()
}

fn write(club: &Club, path: &str, text: &str) {
    fs::write(club.path(path), text).expect("a written file");
}

#[test]
fn values_are_written_where_they_belong_and_a_second_run_changes_nothing() {
    let club = Club::new();
    let sound = club.text(BOAT);
    write(&club, BOAT, &without_sums(&sound));
    let first = club.run(&["derive", "--write"]).ends(0);
    assert!(first.out.starts_with("boats/kittiwake.yaml: 24 values written\n"), "{}", first.out);
    assert!(first.out.contains("kittiwake/seat-1/worked-out/pitch: 3.58 deg\n"), "{}", first.out);
    assert_eq!(club.text(BOAT), sound, "the very bytes that were taken out");
    let second = club.run(&["derive", "--write"]).ends(0);
    assert_eq!(second.out, "boats/kittiwake.yaml: nothing to write\n");
    assert_eq!(club.text(BOAT), sound);
    club.lint(&[]).ends(0);
}

#[test]
fn a_value_that_is_right_as_written_stays_and_a_wrong_one_is_put_right() {
    let club = Club::new()
        .edit(
            BOAT,
            "worked-out: {pitch: 3.58 deg,",
            "worked-out: {pitch: 3.6 deg, # of the day\n     ",
        )
        .edit(BOAT, "clearance: 8.0", "clearance: 9.5");
    let run = club.run(&["derive", "kittiwake", "--write"]).ends(0);
    assert_eq!(
        run.out,
        "boats/kittiwake.yaml: 1 value written\n  kittiwake/seat-1/worked-out/clearance: 9.5 -> 8.0\n"
    );
    let text = club.text(BOAT);
    assert!(text.contains("{pitch: 3.6 deg, # of the day"), "{text}");
    club.lint(&[]).ends(0);
}

#[test]
fn a_file_with_a_fault_stays_and_the_others_are_written() {
    let club = Club::new();
    let bare = without_sums(&club.text(BOAT));
    write(&club, BOAT, &bare.replacen("gap: 60", "gap: 60 mn", 1));
    let other = bare.replace("boat: kittiwake", "boat: fulmar");
    write(&club, "boats/fulmar.yaml", &other);
    write(&club, "boats/gannet.yaml", "baot: gannet\n");
    let run = club.run(&["derive", "--write"]).ends(1);
    assert!(run.out.starts_with("boats/fulmar.yaml: 24 values written\n"), "{}", run.out);
    assert!(
        run.err.contains("boats/kittiwake.yaml is as it was: 1 thing in it can't be read"),
        "{}",
        run.err
    );
    assert!(run.err.contains("boats/gannet.yaml is as it was: it can't be read"), "{}", run.err);
    assert!(!club.text(BOAT).contains("worked-out"), "it is as it was");
}

#[test]
fn a_value_that_can_no_longer_be_worked_out_is_told_and_stays() {
    let club = Club::new().edit(BOAT, "      gap: 60\n", "");
    let run = club.run(&["derive", "--write"]).ends(0);
    assert_eq!(run.out, "boats/kittiwake.yaml: nothing to write\n");
    let told = "kittiwake/seat-1/worked-out/clearance stays as it is written, 8.0: it can't be \
                worked out (rowlock/gap not measured)";
    assert!(run.err.contains(told), "{}", run.err);
}

#[cfg(unix)]
#[test]
fn a_file_that_may_not_be_written_is_named_and_ends_with_3() {
    use std::os::unix::fs::PermissionsExt as _;
    let club = Club::new().edit(BOAT, "clearance: 8.0", "clearance: 9.5");
    let before = club.text(BOAT);
    fs::set_permissions(club.path(BOAT), fs::Permissions::from_mode(0o444)).expect("a mode");
    let run = club.run(&["derive", "--write"]).ends(3);
    let told = "boats/kittiwake.yaml is as it was: it is marked read-only; allow it to be written";
    assert!(run.err.contains(told), "{}", run.err);
    assert_eq!(club.text(BOAT), before);
}
