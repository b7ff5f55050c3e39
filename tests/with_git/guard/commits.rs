//! What is stopped before it is committed, however git is told to commit.

use std::process::Command;

use crate::git::done;
use crate::git::run;
use crate::git::write;
use crate::guard::club::BOAT;
use crate::guard::club::CREW;
use crate::guard::club::Club;
use crate::guard::club::book;
use crate::guard::club::edit;
use crate::guard::club::said;
use crate::guard::club::told;

#[test]
#[ignore = "needs git"]
fn the_commit_of_what_is_staged_of_all_and_of_one_file_is_stopped_for_a_danger_in_it() {
    let club = Club::guarded();
    club.unfit();
    club.stopped(&["commit", "--all", "--message", "all"], "walk-round");
    club.stopped(&["commit", "--message", "one file", BOAT], "walk-round");
    club.stopped(&["-C", "boats", "commit", "--all", "--message", "from below"], "walk-round");
    club.remark("seats in order");
    club.passes(&["commit", "--message", "another file", CREW]);
    done(&club.folder, &["add", BOAT]);
    club.stopped(&["commit", "--message", "staged"], "walk-round");
    // What lies in the folder does not decide.
    done(&club.folder, &["restore", BOAT]);
    edit(&club.folder, BOAT, "walk-round", "hull: unfit", "hull: ok");
    club.stopped(&["commit", "--message", "staged still"], "walk-round");
    done(&club.folder, &["add", BOAT]);
    club.passes(&["commit", "--allow-empty", "--message", "put right"]);
    assert_eq!(club.commits(), "3");
}

#[test]
#[ignore = "needs git"]
fn a_commit_of_chosen_parts_is_judged_by_those_parts() {
    let club = Club::guarded();
    club.unfit();
    edit(&club.folder, BOAT, "seats:", "- seat: 4", "- seat: 4   # by the stern");
    let chosen = |answers: &str| {
        let mut git = Command::new("git");
        git.env("GIT_CONFIG_GLOBAL", "/dev/null").current_dir(&club.folder);
        git.args(["-c", "user.name=Ines Marlow", "-c", "user.email=ines@example.org"]);
        told(git.args(["commit", "--patch", "--message", "parts"]), answers)
    };
    let both = chosen("y\ny\n");
    assert!(!both.status.success() && said(&both).contains("walk-round"), "{}", said(&both));
    done(&club.folder, &["reset", "--quiet"]);
    let harmless = chosen("n\ny\n");
    assert!(harmless.status.success(), "{}", said(&harmless));
    let shown = done(&club.folder, &["show", "HEAD"]);
    assert!(shown.contains("by the stern") && !shown.contains("hull: unfit"), "{shown}");
}

#[test]
#[ignore = "needs git"]
fn an_index_that_cannot_be_read_lets_nothing_pass_and_a_commit_made_anew_is_judged() {
    let club = Club::guarded();
    done(&club.folder, &["update-index", "--split-index"]);
    club.remark("a new crew");
    let said = club.stopped(&["commit", "--all", "--message", "the crew"], "--no-split-index");
    assert!(said.contains("not committed"), "{said}");
    done(&club.folder, &["update-index", "--no-split-index"]);
    club.passes(&["commit", "--all", "--message", "the crew"]);
    club.unfit();
    club.stopped(&["commit", "--all", "--amend", "--no-edit"], "walk-round");
}

#[test]
#[ignore = "needs git"]
fn the_first_commit_is_judged_whole() {
    let club = Club::guarded();
    done(&club.folder, &["switch", "--quiet", "--orphan", "anew"]);
    book(&club.folder);
    club.unfit();
    done(&club.folder, &["add", "--all"]);
    club.stopped(&["commit", "--message", "unfit"], "walk-round");
    edit(&club.folder, BOAT, "walk-round", "hull: unfit", "hull: ok");
    club.passes(&["commit", "--all", "--message", "sound"]);
}

#[test]
#[ignore = "needs git"]
fn what_was_wrong_before_stops_no_commit_of_something_else() {
    let club = Club::new();
    edit(&club.folder, BOAT, "seat: 2", "chock-to-pin: 600", "chock-to-pin: 640");
    club.committed("chocks unlike");
    club.guard(&["install"]);
    club.remark("a new crew");
    club.passes(&["commit", "--all", "--message", "the crew"]);
    edit(&club.folder, BOAT, "seat: 2", "chock-to-pin: 640", "chock-to-pin: 660");
    edit(&club.folder, BOAT, "rigged", "date: 2026-10-17", "date: 2026-10-24");
    club.stopped(&["commit", "--all", "--message", "worse"], "chocks-unlike");
}

#[test]
#[ignore = "needs git"]
fn a_linked_worktree_has_the_same_hooks_and_its_own_index() {
    let club = Club::guarded();
    done(&club.folder, &["worktree", "add", "--quiet", "../linked"]);
    let linked = club.yard.folder.join("linked");
    edit(&linked, BOAT, "walk-round", "hull: ok", "hull: unfit");
    let output = run(&linked, &["commit", "--all", "--message", "unfit"]);
    assert!(!output.status.success() && said(&output).contains("walk-round"), "{}", said(&output));
    club.remark("here all is well");
    club.passes(&["commit", "--all", "--message", "the crew"]);
    // Put in place from a linked worktree they stand for all.
    club.guard(&["remove"]);
    let output = crate::guard::club::program(&linked, &["guard", "install"], "");
    assert!(output.status.success(), "{}", said(&output));
    club.unfit();
    club.stopped(&["commit", "--all", "--message", "unfit"], "walk-round");
}

#[test]
#[ignore = "needs git"]
fn a_book_below_the_top_is_the_one_that_is_checked_whatever_folder_git_stands_in() {
    let club = Club::at("clubs/tarrow head");
    let below = club.folder.join("clubs/tarrow head");
    book(&club.folder.join("clubs/other"));
    club.committed("two books");
    club.guard(&["install", "--book", "clubs/tarrow head"]);
    edit(&below, BOAT, "walk-round", "hull: ok", "hull: unfit");
    club.stopped(&["commit", "--all", "--message", "unfit"], "walk-round");
    done(&club.folder, &["restore", "."]);
    edit(&club.folder.join("clubs/other"), BOAT, "walk-round", "hull: ok", "hull: unfit");
    club.passes(&["-C", "clubs/other", "commit", "--all", "--message", "not guarded"]);
    // A second one is guarded beside the first.
    club.guard(&["install", "--book", "clubs/other"]);
    edit(&club.folder.join("clubs/other"), BOAT, "walk-round", "bung: ok", "bung: unfit");
    let said = club.stopped(&["commit", "--all", "--message", "the other"], "bung: unfit");
    assert!(said.contains("The book clubs/tarrow head:"), "{said}");
    edit(&club.folder.join("clubs/other"), BOAT, "walk-round", "bung: unfit", "bung: ok");
    edit(&below, BOAT, "walk-round", "bung: ok", "bung: unfit");
    club.stopped(&["commit", "--all", "--message", "the first"], "bung: unfit");
}

#[test]
#[ignore = "needs git"]
fn a_branch_that_never_had_a_book_is_not_guarded_and_a_book_does_not_go_unseen() {
    let club = Club::guarded();
    done(&club.folder, &["rm", "--quiet", "club.yaml"]);
    club.stopped(&["commit", "--message", "no club"], "club.yaml");
    done(&club.folder, &["switch", "--quiet", "--force", "--orphan", "pages"]);
    write(&club.folder, "index.html", "<p>Tarrow Head</p>\n");
    done(&club.folder, &["add", "--all"]);
    let said = club.passes(&["commit", "--message", "pages"]);
    assert!(said.contains("nothing was checked"), "{said}");
}
