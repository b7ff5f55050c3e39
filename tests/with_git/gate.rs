//! The program as a gate of real git: in a hook, and after a merge that git found clean.

use std::fs;
use std::path::Path;
use std::path::PathBuf;
use std::process::Command;

use crate::git::Yard;
use crate::git::done;
use crate::git::run;

const BOAT: &str = "boats/kittiwake.yaml";
const OARS: &str = "oars/long-ash.yaml";

/// A repository of the sound book.
fn club(yard: &Yard) -> PathBuf {
    done(&yard.folder, &["init", "--quiet", "--initial-branch=main", "book"]);
    let club = yard.folder.join("book");
    let from = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/sound-book");
    for path in ["club.yaml", BOAT, OARS, "crews/masters-a.yaml"] {
        let to = club.join(path);
        fs::create_dir_all(to.parent().expect("a folder")).expect("a new folder");
        fs::copy(from.join(path), to).expect("a copy");
    }
    committed(&club, "the book");
    club
}

fn committed(club: &Path, what: &str) {
    done(club, &["add", "--all"]);
    done(club, &["commit", "--quiet", "--no-verify", "--message", what]);
}

/// Changes the first `from` after the first `after`.
fn edit(club: &Path, path: &str, after: &str, from: &str, to: &str) {
    let text = fs::read_to_string(club.join(path)).expect("a text");
    let (before, rest) = text.split_at(text.find(after).expect("the text before"));
    assert!(rest.contains(from), "{path} does not hold {from:?}");
    fs::write(club.join(path), format!("{before}{}", rest.replacen(from, to, 1))).expect("a file");
}

fn gap(club: &Path, gap: &str, clearance: &str) {
    edit(club, BOAT, "seat: 2", "gap: 60", &format!("gap: {gap}"));
    edit(club, BOAT, "seat: 2", "clearance: 8.0", &format!("clearance: {clearance}"));
    edit(club, BOAT, "rigged", "date: 2026-10-17", "date: 2026-10-24");
}

fn with_hook(club: &Path) {
    let program = env!("CARGO_BIN_EXE_tholebook");
    let line = format!(
        "#!/bin/sh\nexec '{program}' lint --staged --since HEAD --as-of 2026-11-01 --format brief >&2\n"
    );
    let hook = club.join(".git/hooks/pre-commit");
    fs::create_dir_all(club.join(".git/hooks")).expect("a folder");
    fs::write(&hook, line).expect("a file");
    #[cfg(unix)]
    fs::set_permissions(&hook, std::os::unix::fs::PermissionsExt::from_mode(0o755)).expect("ours");
}

fn lint(club: &Path, words: &[&str]) -> (Option<i32>, String) {
    let mut program = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    program.arg("lint").arg(club).args(["--as-of", "2026-11-01", "--format", "brief"]).args(words);
    let output = program.output().expect("the program runs");
    (output.status.code(), String::from_utf8_lossy(&output.stdout).into_owned())
}

#[test]
#[ignore = "needs git"]
fn a_hook_sees_what_is_about_to_be_committed_however_git_is_told() {
    let yard = Yard::new();
    let club = club(&yard);
    with_hook(&club);
    gap(&club, "55", "3.0");
    for words in [
        &["commit", "--all", "--message", "too tight"][..],
        &["commit", "--message", "too tight", BOAT],
    ] {
        let output = run(&club, words);
        let told = String::from_utf8_lossy(&output.stderr).into_owned();
        assert!(!output.status.success(), "{words:?} was let through: {told}");
        assert!(told.contains("gap-too-tight"), "{told}");
    }
    // What is not staged does not stop a commit of something else.
    edit(&club, "club.yaml", "", "publish-crew: false", "publish-crew: true");
    done(&club, &["add", "club.yaml"]);
    done(&club, &["commit", "--quiet", "--message", "the crew is shown"]);
}

#[test]
#[ignore = "needs git"]
fn a_merge_that_git_finds_clean_is_told_before_and_after() {
    let yard = Yard::new();
    let club = club(&yard);
    done(&club, &["switch", "--quiet", "--create", "spare"]);
    edit(&club, OARS, "oar: A5", "widest: 52", "widest: 53.3");
    edit(&club, OARS, "measured", "date: 2026-10-03", "date: 2026-10-24");
    committed(&club, "a thicker spare");
    assert_eq!(lint(&club, &[]).0, Some(0));
    done(&club, &["switch", "--quiet", "main"]);
    gap(&club, "58", "6.0");
    committed(&club, "a narrower gap");
    assert_eq!(lint(&club, &[]).0, Some(0));
    let before = lint(&club, &["--merge-with", "spare"]);
    assert!(before.0 == Some(1) && before.1.contains("gap-too-tight"), "{}", before.1);
    done(&club, &["merge", "--quiet", "--no-edit", "spare"]);
    let after = lint(&club, &[]);
    assert!(after.0 == Some(1) && after.1.contains("kittiwake/seat-2/spare/A5"), "{}", after.1);
}

#[test]
#[ignore = "needs git"]
fn a_key_that_a_union_merge_doubled_is_told_before_and_after() {
    let yard = Yard::new();
    let club = club(&yard);
    fs::write(club.join(".gitattributes"), "*.yaml merge=union\n").expect("a file");
    committed(&club, "lines of both sides are kept");
    done(&club, &["switch", "--quiet", "--create", "other"]);
    edit(&club, BOAT, "seat: 2", "gap: 60", "gap: 59");
    committed(&club, "59");
    done(&club, &["switch", "--quiet", "main"]);
    edit(&club, BOAT, "seat: 2", "gap: 60", "gap: 58");
    committed(&club, "58");
    let before = lint(&club, &["--merge-with", "other"]);
    assert!(before.0 == Some(1) && before.1.contains("key-twice"), "{}", before.1);
    done(&club, &["merge", "--quiet", "--no-edit", "other"]);
    let after = lint(&club, &[]);
    assert!(after.0 == Some(1) && after.1.contains("key-twice"), "{}", after.1);
}
