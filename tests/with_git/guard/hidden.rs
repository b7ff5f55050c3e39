//! What is kept out of the gate's sight: it is not taken for mended.

use std::fs;
use std::path::Path;
use std::path::PathBuf;

use crate::git::done;
use crate::guard::club::Club;
use crate::guard::club::edit;
use crate::guard::club::second_boat;

/// A clone without hooks, and a server with a gate that has its book.
fn club() -> (Club, PathBuf) {
    let club = Club::new();
    let server = club.server();
    club.passes(&["push", "--quiet", "origin", "main"]);
    (club, server)
}

/// Pushes what the gate would not take.
fn pushed_before_the_gate(club: &Club, server: &Path) {
    let hook = server.join("hooks/pre-receive");
    fs::rename(&hook, server.join("aside")).expect("moved");
    club.passes(&["push", "--quiet", "origin", "main"]);
    fs::rename(server.join("aside"), &hook).expect("moved");
}

#[test]
#[ignore = "needs git"]
fn a_danger_is_not_let_out_with_its_record() {
    let (club, server) = club();
    second_boat(&club, "hull: unfit");
    club.committed("a second boat, unfit");
    pushed_before_the_gate(&club, &server);
    club.guard(&["install"]);
    fs::create_dir_all(club.folder.join("boats/.d")).expect("a folder");
    for words in [
        &["rm", "--quiet", "boats/fulmar.yaml"][..],
        &["mv", "boats/fulmar.yaml", "boats/fulmar.txt"],
        &["mv", "boats/fulmar.yaml", "boats/.d/fulmar.yaml"],
    ] {
        done(&club.folder, words);
        let said = club.stopped(&["commit", "--message", "hidden"], "no longer in the book");
        assert!(said.contains("out-of-use"), "{said}");
        club.committed("hidden");
        club.stopped(&["push", "--no-verify", "origin", "main"], "no longer in the book");
        done(&club.folder, &["reset", "--quiet", "--hard", "HEAD~1"]);
    }
    // She is first recorded as out of use.
    let out = "out-of-use: {since: 2026-10-20, by: Tomas Reyne, because: stove in}\nrigged:";
    edit(&club.folder, "boats/fulmar.yaml", "", "rigged:", out);
    club.passes(&["commit", "--all", "--message", "out of use"]);
    club.passes(&["push", "origin", "main"]);
    done(&club.folder, &["rm", "--quiet", "boats/fulmar.yaml"]);
    club.passes(&["commit", "--message", "sold"]);
    club.passes(&["push", "origin", "main"]);
}

#[test]
#[ignore = "needs git"]
fn another_folder_does_not_stand_for_the_book_whose_records_are_still_there() {
    let (club, _) = club();
    for path in ["club.yaml", crate::guard::club::OARS] {
        let text = fs::read_to_string(club.folder.join(path)).expect("a text");
        crate::git::write(&club.folder.join("decoy"), path, &text);
    }
    done(&club.folder, &["mv", "club.yaml", "club.yml"]);
    club.committed("a decoy");
    let said = club.stopped(&["push", "origin", "main"], "the book lay in the top folder");
    assert!(said.contains("remote: main: refused"), "{said}");
    done(&club.folder, &["reset", "--quiet", "--hard", "HEAD~1"]);
    // A book that is moved whole is the same book.
    fs::create_dir_all(club.folder.join("log")).expect("a folder");
    done(&club.folder, &["mv", "club.yaml", "boats", "oars", "crews", "log"]);
    club.committed("moved");
    club.passes(&["push", "origin", "main"]);
    edit(
        &club.folder.join("log"),
        crate::guard::club::BOAT,
        "walk-round",
        "hull: ok",
        "hull: unfit",
    );
    club.committed("unfit");
    club.stopped(&["push", "origin", "main"], "walk-round");
}

#[test]
#[ignore = "needs git"]
fn a_gate_names_what_it_did_not_read() {
    let (club, _) = club();
    club.guard(&["install"]);
    second_boat(&club, "hull: unfit");
    fs::create_dir_all(club.folder.join("boats/.d")).expect("a folder");
    fs::rename(club.folder.join("boats/fulmar.yaml"), club.folder.join("boats/.d/fulmar.yaml"))
        .expect("moved");
    done(&club.folder, &["add", "--all"]);
    let said = club.passes(&["commit", "--message", "hidden"]);
    assert!(said.contains("Not read: boats/.d/fulmar.yaml."), "{said}");
    let said = club.passes(&["push", "origin", "main"]);
    assert!(said.contains("remote: Not read: boats/.d/fulmar.yaml."), "{said}");
    assert!(said.contains("1 check not made"), "{said}");
}
