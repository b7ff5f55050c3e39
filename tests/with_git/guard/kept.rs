//! A hook that was there before is called first, hears what git says, and comes back.

use std::fs;

use crate::git::done;
use crate::guard::club::Club;
use crate::guard::club::other_hook;

fn hooks(club: &Club) -> Vec<String> {
    let entries = fs::read_dir(club.folder.join(".git/hooks")).expect("a folder");
    let names = entries.map(|entry| entry.expect("an entry").file_name());
    let mut names: Vec<String> = names.map(|name| name.to_string_lossy().into_owned()).collect();
    names.retain(|name| !name.ends_with(".sample"));
    names.sort();
    names
}

#[test]
#[ignore = "needs git"]
fn a_hook_of_another_program_is_called_first_and_its_refusal_stands() {
    let club = Club::new();
    let git = club.folder.join(".git");
    let text = "#!/bin/sh\necho called >>seen.txt\ntest ! -e refuse || exit 7\n";
    other_hook(&git, "pre-commit", text);
    let said = club.guard(&["install"]);
    assert!(said.contains("the hook that was there is called first"), "{said}");
    club.remark("one");
    club.passes(&["commit", "--all", "--message", "one"]);
    assert_eq!(fs::read_to_string(club.folder.join("seen.txt")).expect("a text"), "called\n");
    fs::write(club.folder.join("refuse"), "").expect("a file");
    club.remark("two");
    let said = club.stopped(&["commit", "--all", "--message", "two"], "");
    assert!(!said.contains("tholebook"), "ours was not asked any more: {said}");
    fs::remove_file(club.folder.join("refuse")).expect("it was there");
    club.unfit();
    club.stopped(&["commit", "--all", "--message", "unfit"], "walk-round");
    let before = hooks(&club);
    club.guard(&["install"]);
    assert_eq!(hooks(&club), before, "twice is once");
    let said = club.guard(&["remove"]);
    assert!(said.contains("the one that was there before is back"), "{said}");
    assert_eq!(hooks(&club), ["pre-commit"]);
    assert_eq!(fs::read_to_string(git.join("hooks/pre-commit")).expect("a hook"), text);
    club.passes(&["commit", "--all", "--message", "nobody asks about the boat"]);
}

#[test]
#[ignore = "needs git"]
fn a_hook_that_is_no_shell_script_is_called_as_it_is() {
    let club = Club::new();
    let awk = ["/usr/bin/awk", "/bin/awk"].into_iter().find(|awk| fs::metadata(awk).is_ok());
    let awk = awk.expect("every system with a shell has awk");
    let text = format!("#!{awk} -f\nBEGIN {{ print \"awk\" >\"seen.txt\"; exit 5 }}\n");
    other_hook(&club.folder.join(".git"), "pre-commit", &text);
    club.guard(&["install"]);
    club.remark("one");
    club.stopped(&["commit", "--all", "--message", "one"], "");
    assert_eq!(fs::read_to_string(club.folder.join("seen.txt")).expect("a text"), "awk\n");
}

#[test]
#[ignore = "needs git"]
fn both_hooks_hear_what_is_pushed_and_to_where() {
    let club = Club::new();
    let text = "#!/bin/sh\ncat >seen.txt\necho \"$1 $2\" >>seen.txt\n";
    other_hook(&club.folder.join(".git"), "pre-push", text);
    club.guard(&["install"]);
    done(&club.yard.folder, &["init", "--quiet", "--bare", "plain.git"]);
    done(&club.folder, &["remote", "add", "origin", "../plain.git"]);
    club.passes(&["push", "--quiet", "origin", "main"]);
    let head = done(&club.folder, &["rev-parse", "HEAD"]);
    let nothing = "0".repeat(40);
    assert_eq!(
        fs::read_to_string(club.folder.join("seen.txt")).expect("a text"),
        format!("refs/heads/main {head} refs/heads/main {nothing}\norigin ../plain.git\n")
    );
    club.unfit();
    club.committed("unfit");
    club.stopped(&["push", "origin", "main"], "walk-round");
}

#[test]
#[ignore = "needs git"]
fn a_hook_that_does_not_listen_stops_nothing() {
    let club = Club::new();
    other_hook(&club.folder.join(".git"), "pre-push", "#!/bin/sh\nexit 0\n");
    club.guard(&["install"]);
    done(&club.yard.folder, &["init", "--quiet", "--bare", "plain.git"]);
    done(&club.folder, &["remote", "add", "origin", "../plain.git"]);
    club.passes(&["push", "--quiet", "origin", "main"]);
}
