//! What is stopped before it is sent away.

use std::fs;

use crate::git::done;
use crate::guard::club::Club;
use crate::guard::club::edit;

/// A clone with hooks, and a bare repository without a gate.
fn club() -> Club {
    let club = Club::guarded();
    done(&club.yard.folder, &["init", "--quiet", "--bare", "--initial-branch=main", "plain.git"]);
    done(&club.folder, &["remote", "add", "origin", "../plain.git"]);
    club.passes(&["push", "--quiet", "origin", "main"]);
    club
}

#[test]
#[ignore = "needs git"]
fn the_tip_that_is_pushed_is_judged_and_not_what_is_checked_out() {
    let club = club();
    done(&club.folder, &["switch", "--quiet", "--create", "trial"]);
    club.unfit();
    club.passes(&["commit", "--all", "--no-verify", "--message", "unfit"]);
    done(&club.folder, &["switch", "--quiet", "main"]);
    club.stopped(&["push", "origin", "trial"], "walk-round");
    club.stopped(&["push", "origin", "trial:refs/heads/main"], "walk-round");
    club.stopped(&["push", "origin", "main", "trial"], "walk-round");
    club.passes(&["push", "origin", "main"]);
    club.passes(&["push", "--no-verify", "origin", "trial"]);
    // What is deleted has no tip; a tag changes no branch.
    club.passes(&["push", "origin", "--delete", "trial"]);
    club.passes(&["tag", "--annotate", "--message=t", "trial-day", "trial"]);
    club.passes(&["push", "origin", "trial-day"]);
}

#[test]
#[ignore = "needs git"]
fn a_new_branch_is_judged_by_what_it_brings_to_those_that_are_there() {
    let club = club();
    edit(
        &club.folder,
        crate::guard::club::BOAT,
        "seat: 2",
        "chock-to-pin: 600",
        "chock-to-pin: 640",
    );
    club.committed("chocks unlike");
    club.stopped(&["push", "origin", "main"], "chocks-unlike");
    club.passes(&["push", "--quiet", "--no-verify", "origin", "main"]);
    done(&club.folder, &["switch", "--quiet", "--create", "crew"]);
    club.remark("a new crew");
    club.passes(&["commit", "--all", "--message", "the crew"]);
    club.passes(&["push", "origin", "crew"]);
}

#[test]
#[ignore = "needs git"]
fn a_branch_that_the_club_does_not_guard_may_hold_what_is_not_ready() {
    let club = club();
    let text = fs::read_to_string(club.folder.join("club.yaml")).expect("a club");
    let text = text.replace("longest-waiver-days: 60", "longest-waiver-days: 60, branches: [main]");
    crate::git::write(&club.folder, "club.yaml", &text);
    club.passes(&["commit", "--all", "--message", "main is guarded"]);
    club.unfit();
    club.passes(&["commit", "--all", "--no-verify", "--message", "unfit"]);
    club.passes(&["push", "origin", "main:refs/heads/not-ready"]);
    club.stopped(&["push", "origin", "main"], "walk-round");
}
