//! What the hooks of a clone see of a merge, and what passes them by: they are no gate.

use crate::git::done;
use crate::git::run;
use crate::guard::club::BOAT;
use crate::guard::club::Club;
use crate::guard::club::edit;

#[test]
#[ignore = "needs git"]
fn a_clean_merge_of_two_sound_branches_is_stopped_where_it_is_not_sound() {
    let club = Club::guarded();
    club.parted();
    let said = club.stopped(&["merge", "--no-edit", "spare"], "gap-too-tight");
    assert!(said.contains("spare/A5"), "{said}");
    // The merge is not finished, and no commit of it passes either.
    club.stopped(&["commit", "--no-edit"], "gap-too-tight");
    done(&club.folder, &["merge", "--abort"]);
    assert_eq!(club.commits(), "2");
}

#[test]
#[ignore = "needs git"]
fn a_clean_merge_of_what_each_side_knew_passes() {
    let club = Club::new();
    done(&club.folder, &["switch", "--quiet", "--create", "other"]);
    edit(&club.folder, BOAT, "seat: 2", "chock-to-pin: 600", "chock-to-pin: 640");
    club.committed("an old fault of the other side, not read again");
    done(&club.folder, &["switch", "--quiet", "main"]);
    club.remark("a new crew");
    club.committed("the crew");
    club.guard(&["install"]);
    let said = club.passes(&["merge", "--no-edit", "other"]);
    assert!(said.contains("0 new"), "{said}");
    assert_eq!(club.commits(), "4");
}

#[test]
#[ignore = "needs git"]
fn a_cherry_pick_a_revert_and_no_verify_pass_by_and_the_server_stops_them() {
    let club = Club::guarded();
    club.server();
    club.passes(&["push", "--quiet", "origin", "main"]);
    done(&club.folder, &["switch", "--quiet", "--create", "trial"]);
    club.unfit();
    club.passes(&["commit", "--all", "--no-verify", "--message", "unfit"]);
    done(&club.folder, &["switch", "--quiet", "main"]);
    club.passes(&["cherry-pick", "trial"]);
    club.stopped(&["push", "origin", "main"], "walk-round");
    club.stopped(&["push", "--no-verify", "origin", "main"], "remote: ");
    club.passes(&["revert", "--no-edit", "HEAD"]);
    club.passes(&["push", "--quiet", "origin", "main"]);
    club.passes(&["revert", "--no-edit", "HEAD"]);
    club.stopped(&["push", "--no-verify", "origin", "main"], "walk-round");
}

#[test]
#[ignore = "needs git"]
fn a_fast_forward_and_a_rebase_make_no_merge_to_be_seen() {
    let club = Club::guarded();
    done(&club.folder, &["switch", "--quiet", "--create", "trial"]);
    club.unfit();
    club.passes(&["commit", "--all", "--no-verify", "--message", "unfit"]);
    done(&club.folder, &["switch", "--quiet", "main"]);
    club.passes(&["merge", "--ff-only", "trial"]);
    done(&club.folder, &["reset", "--quiet", "--hard", "HEAD~1"]);
    club.remark("meanwhile");
    club.passes(&["commit", "--all", "--message", "the crew"]);
    assert!(run(&club.folder, &["rebase", "--quiet", "main", "trial"]).status.success());
}
