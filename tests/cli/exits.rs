//! What each exit code says.

use std::fs;

use crate::run::BOAT;
use crate::run::Club;
use crate::run::Run;

#[test]
fn a_sound_book_ends_with_0_and_nothing_on_standard_error() {
    let run = Club::new().lint(&[]).ends(0);
    assert!(run.out.starts_with("checked 1 boat, 1 oar set, 1 crew, "), "{}", run.out);
    assert_eq!(run.err, "");
}

#[test]
fn the_book_around_the_current_folder_is_found() {
    let club = Club::tight();
    let mut command = club.command(&["lint"]);
    command.current_dir(club.path("boats"));
    Run::of(&mut command).ends(1);
}

#[test]
fn a_book_is_named_by_its_folder() {
    let club = Club::tight();
    let folder = club.folder.path().to_str().expect("UTF-8");
    let elsewhere = tempfile::tempdir().expect("a folder");
    let mut command = club.command(&["lint", folder]);
    Run::of(command.current_dir(elsewhere.path())).ends(1);
}

#[test]
fn findings_end_with_1_from_the_failing_level_on() {
    let leaning = Club::leaning();
    leaning.lint(&[]).ends(1);
    for level in ["fault", "unsure", "note"] {
        leaning.lint(&["--fail-on", level]).ends(1);
    }
    for level in ["danger", "never"] {
        leaning.lint(&["--fail-on", level]).ends(0);
    }
}

#[test]
fn danger_ends_with_1_whatever_is_asked() {
    let tight = Club::tight();
    for level in ["danger", "fault", "unsure", "note", "never"] {
        tight.lint(&["--fail-on", level]).ends(1);
    }
}

#[test]
fn what_is_unsure_stops_nothing_unless_asked() {
    let unsure = Club::new().edit(BOAT, "lean: {aft: 0.5", "lean: {aft: 3");
    let only = ["--only", "kittiwake/seat-1/pin/lean"];
    assert!(unsure.lint(&only).ends(0).out.contains("1 unsure"));
    unsure.lint(&[&only[..], &["--fail-on", "unsure"]].concat()).ends(1);
}

#[test]
fn a_boat_out_of_use_stops_nothing_and_shows_everything() {
    let out = "class: surfboat\nout-of-use: {since: 2026-10-20, by: Ines Marlow, because: plank}";
    let run = Club::tight().edit(BOAT, "class: surfboat", out).lint(&[]).ends(0);
    assert!(run.out.contains("gap-too-tight"), "{}", run.out);
    assert!(run.out.contains("on boats out of use"), "{}", run.out);
}

#[test]
fn wrong_usage_ends_with_2() {
    let club = Club::new();
    for arguments in [
        &["--fail-on", "worry"][..],
        &["--as-of", "17.10.2026"],
        &["--width", "0"],
        &["--format", "pictures"],
        &["--name", BOAT],
        &["-"],
        &["one", "two"],
        &["--nonsense"],
    ] {
        let run = club.lint(arguments).ends(2);
        assert!(!run.err.is_empty() && run.out.is_empty(), "{arguments:?}: {}", run.out);
    }
    assert!(club.run(&[]).ends(2).err.contains("Usage"));
    club.run(&["launch"]).ends(2);
}

#[test]
fn settings_that_cannot_be_read_end_with_2_and_the_rest_is_judged() {
    for (from, to) in [("logbook: 1", "logbook: ["), ("callipers: 0.2", "calipers: 0.2")] {
        let run = Club::tight().edit("club.yaml", from, to).lint(&[]).ends(2);
        assert!(run.out.contains("gap-too-tight"), "{}", run.out);
        assert!(run.err.contains("club.yaml"), "{}", run.err);
    }
}

#[test]
fn a_record_that_cannot_be_read_does_not_hide_the_others() {
    let club = Club::tight();
    fs::write(club.path("boats/tern.yaml"), "boat: tern\nwund: light\n").expect("a new file");
    let run = club.lint(&["--format", "brief"]).ends(1);
    assert!(run.out.contains("boats/tern.yaml:2:1: fault unknown-key"), "{}", run.out);
    assert!(run.out.contains("boats/kittiwake.yaml:43:12: danger"), "{}", run.out);
}

#[test]
fn nothing_to_check_ends_with_3_unless_that_is_allowed() {
    let empty = Club::empty();
    let run = empty.lint(&[]).ends(3);
    assert!(run.err.contains("--allow-empty"), "{}", run.err);
    assert!(run.out.starts_with("checked 0 boats"), "{}", run.out);
    empty.lint(&["--allow-empty"]).ends(0);
}

#[test]
fn what_is_no_book_ends_with_3() {
    let folder = tempfile::tempdir().expect("a folder");
    let club = Club { folder };
    let run = club.lint(&[]).ends(3);
    assert!(run.err.contains("club.yaml"), "{}", run.err);
    club.lint(&["no-such-folder"]).ends(3);
    club.run(&["derive"]).ends(3);
}

#[cfg(unix)]
#[test]
fn a_file_that_may_not_be_read_ends_with_3_and_is_named() {
    use std::os::unix::fs::PermissionsExt as _;
    let club = Club::new();
    let shut = |mode| fs::set_permissions(club.path(BOAT), fs::Permissions::from_mode(mode));
    shut(0o000).expect("a changed mode");
    if fs::read(club.path(BOAT)).is_ok() {
        // Root reads everything; a socket can't be read by anybody.
        fs::remove_file(club.path(BOAT)).expect("a removed file");
        std::os::unix::net::UnixListener::bind(club.path(BOAT)).expect("a socket");
    }
    let run = club.lint(&[]).ends(3);
    assert!(run.err.contains(BOAT), "{}", run.err);
}
