//! A danger is not put out of sight by putting its record out of the book.

use std::fs;

use crate::git::done;
use crate::guard::club::BOAT;
use crate::guard::club::Club;
use crate::guard::club::program;
use crate::guard::club::said;

/// A club whose boat has a danger, and a server with a gate that has it too.
fn with_a_danger() -> Club {
    let club = Club::new();
    club.unfit();
    club.committed("a crack in the hull");
    done(&club.yard.folder, &["clone", "--quiet", "--bare", "club", "server.git"]);
    let output = program(&club.yard.folder.join("server.git"), &["guard", "install"], "");
    assert!(output.status.success(), "{}", said(&output));
    done(&club.folder, &["remote", "add", "origin", "../server.git"]);
    club
}

#[test]
#[ignore = "needs git"]
fn a_record_with_a_danger_is_not_taken_out_of_the_book() {
    for hide in [
        &["rm", "--quiet", BOAT][..],
        &["mv", BOAT, "boats/kittiwake.txt"],
        &["mv", BOAT, "kittiwake.yaml"],
        &["mv", BOAT, "notes/"],
        &["mv", BOAT, "boats/.old/"],
    ] {
        let club = with_a_danger();
        fs::create_dir_all(club.folder.join("notes")).expect("a folder");
        fs::create_dir_all(club.folder.join("boats/.old")).expect("a folder");
        done(&club.folder, hide);
        let lint = program(&club.folder, &["lint", "--staged", "--since", "HEAD"], "");
        assert_eq!(lint.status.code(), Some(1), "{hide:?}: {}", said(&lint));
        assert!(!said(&lint).contains("cured: danger"), "{hide:?}: {}", said(&lint));
        club.committed("tidied up");
        let said = club.stopped(&["push", "origin", "main"], "and not put right");
        assert!(said.contains("kittiwake is no longer in the book"), "{hide:?}: {said}");
    }
}

#[test]
#[ignore = "needs git"]
fn a_boat_that_is_out_of_use_may_leave_the_book() {
    let club = with_a_danger();
    let file = club.folder.join(BOAT);
    let text = fs::read_to_string(&file).expect("the boat");
    let today = jiff::ZonedDateTime::now().date();
    let out = format!("out-of-use: {{since: {today}, by: Ines Marlow, because: cracked}}\n");
    fs::write(&file, format!("{text}{out}")).expect("the boat");
    club.committed("out of use");
    club.passes(&["push", "origin", "main"]);
    let crew = club.folder.join("crews/masters-a.yaml");
    let text = fs::read_to_string(&crew).expect("the crew");
    assert!(text.contains("boat: kittiwake"), "{text}");
    done(&club.folder, &["rm", "--quiet", BOAT, "crews/masters-a.yaml"]);
    club.committed("sold");
    let said = club.passes(&["push", "origin", "main"]);
    assert!(said.contains("kittiwake is no longer in the book"), "{said}");
}

#[test]
#[ignore = "needs git"]
fn another_book_does_not_stand_in_for_the_one_that_was_there() {
    let club = with_a_danger();
    for path in ["club.yaml", "oars/long-ash.yaml"] {
        let to = club.folder.join("decoy").join(path);
        fs::create_dir_all(to.parent().expect("a folder")).expect("a folder");
        fs::copy(club.folder.join(path), to).expect("a copy");
    }
    done(&club.folder, &["mv", "club.yaml", "club.yml"]);
    club.committed("a new home");
    club.stopped(&["push", "origin", "main"], "no book");
}
