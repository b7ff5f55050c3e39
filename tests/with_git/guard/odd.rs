//! Folders of hooks that are not ours to write into, programs that are gone, hooks that git passes
//! over; and what the checkup says of clones that git made.

use std::fs;
use std::path::Path;

use crate::git::done;
use crate::git::write;
use crate::guard::club::BOAT;
use crate::guard::club::CREW;
use crate::guard::club::Club;
use crate::guard::club::PROGRAM;
use crate::guard::club::other_hook;
use crate::guard::club::program;
use crate::guard::club::said;

/// Runs `guard` or `checkup`, which must end so.
#[track_caller]
fn ends(folder: &Path, words: &[&str], code: i32) -> String {
    let output = program(folder, words, "");
    assert_eq!(output.status.code(), Some(code), "{words:?}: {}", said(&output));
    said(&output)
}

#[test]
#[ignore = "needs git"]
fn a_folder_of_hooks_elsewhere_is_not_written_to_and_the_line_to_add_works_there() {
    let club = Club::new();
    let shared = club.yard.folder.join("shared hooks");
    fs::create_dir(&shared).expect("a folder");
    done(&club.folder, &["config", "core.hooksPath", &shared.display().to_string()]);
    let told = ends(&club.folder, &["guard", "install"], 2);
    assert!(told.contains("leads out of the repository"), "{told}");
    assert_eq!(fs::read_dir(&shared).expect("a folder").count(), 0, "nothing was written");
    let line = told.lines().find_map(|line| line.trim().strip_prefix("pre-commit: "));
    let line = line.expect("the line to add");
    other_hook(&club.yard.folder, "x", "");
    fs::rename(club.yard.folder.join("hooks/x"), shared.join("pre-commit")).expect("moved");
    fs::write(shared.join("pre-commit"), format!("#!/bin/sh\n{line}\n")).expect("a hook");
    club.unfit();
    club.stopped(&["commit", "--all", "--message", "unfit"], "walk-round");
    let status = ends(&club.folder, &["guard", "status"], 1);
    assert!(status.contains("it names tholebook"), "{status}");
    assert!(status.contains("not installed") && status.contains("the line to add"), "{status}");
}

#[test]
#[ignore = "needs git"]
fn a_folder_of_hooks_among_the_files_is_not_written_to() {
    let club = Club::new();
    done(&club.folder, &["config", "core.hooksPath", "tools/hooks"]);
    let told = ends(&club.folder, &["guard", "install"], 2);
    assert!(told.contains("any commit can change a hook there"), "{told}");
    assert!(!club.folder.join("tools").exists());
    // One of git's own folders is nobody else's.
    done(&club.folder, &["config", "core.hooksPath", ".git/our hooks"]);
    club.guard(&["install"]);
    assert!(club.folder.join(".git/our hooks/pre-commit").is_file());
    club.unfit();
    club.stopped(&["commit", "--all", "--message", "unfit"], "walk-round");
    #[cfg(unix)]
    {
        done(&club.folder, &["config", "--unset", "core.hooksPath"]);
        fs::remove_dir_all(club.folder.join(".git/hooks")).ok();
        std::os::unix::fs::symlink("../tools", club.folder.join(".git/hooks")).expect("a link");
        fs::create_dir(club.folder.join("tools")).expect("a folder");
        ends(&club.folder, &["guard", "install"], 2);
    }
}

#[test]
#[ignore = "needs git"]
fn a_program_that_a_commit_can_change_is_not_called() {
    let club = Club::new();
    let own = club.folder.join("tools/tholebook");
    fs::create_dir(club.folder.join("tools")).expect("a folder");
    // Copied by another program: what this one writes is open in the children of other tests too.
    let copied = std::process::Command::new("cp").arg(PROGRAM).arg(&own).status();
    assert!(copied.expect("cp is where git is").success());
    let install = |more: &[&str]| {
        let mut command = std::process::Command::new(&own);
        command.current_dir(&club.folder).args([&["guard", "install"], more].concat());
        let output = command.output().expect("it runs");
        (output.status.code(), said(&output))
    };
    let (code, told) = install(&[]);
    assert!(code == Some(2) && told.contains("must not judge that commit"), "{told}");
    assert!(!club.folder.join(".git/hooks/pre-commit").exists());
    assert_eq!(install(&["--program-among-files"]).0, Some(0));
}

#[test]
#[ignore = "needs git"]
fn a_program_that_is_gone_is_warned_of_and_lets_pass() {
    let club = Club::guarded();
    let hook = club.folder.join(".git/hooks/pre-commit");
    let text = fs::read_to_string(&hook).expect("a hook");
    fs::write(&hook, text.replace(PROGRAM, "/gone/tholebook")).expect("a hook");
    club.unfit();
    let said = club.passes(&["commit", "--all", "--message", "unfit"]);
    assert!(said.contains("tholebook is not at /gone/tholebook"), "{said}");
    let status = ends(&club.folder, &["guard", "status"], 1);
    assert!(
        status.contains("/gone/tholebook, which is not there | tholebook guard install"),
        "{status}"
    );
    club.guard(&["install"]);
    ends(&club.folder, &["guard", "status"], 0);
}

#[test]
#[ignore = "needs git"]
fn each_way_a_hook_may_stand_is_told_in_one_line() {
    let club = Club::new();
    let git = club.folder.join(".git");
    let status = |code| ends(&club.folder, &["guard", "status"], code);
    assert_eq!(status(1).matches("not installed | tholebook guard install").count(), 3);
    other_hook(&git, "pre-commit", "#!/bin/sh\n");
    assert!(status(1).contains("another program's hook | tholebook guard install"));
    club.guard(&["install"]);
    assert!(status(0).contains("another program's hook is called first"));
    let hook = git.join("hooks/pre-push");
    let text = fs::read_to_string(&hook).expect("a hook");
    fs::write(&hook, format!("{text}exit 0\n")).expect("a hook");
    assert!(status(1).contains("out of date, or changed by hand"));
    #[cfg(unix)]
    {
        let mode = std::os::unix::fs::PermissionsExt::from_mode(0o644);
        fs::set_permissions(&hook, mode).expect("ours");
        assert!(status(1).contains("not executable"));
    }
    club.guard(&["install"]);
    status(0);
    // Another program wrote its own over ours: two are to be kept, and none is lost.
    other_hook(&git, "pre-commit", "#!/bin/sh\n# a third\n");
    let told = ends(&club.folder, &["guard", "install"], 2);
    assert!(told.contains("Make one of the two"), "{told}");
    let told = club.guard(&["remove"]);
    assert!(told.contains("so was the one that was kept"), "{told}");
    assert!(git.join("hooks/pre-commit.kept-by-tholebook").is_file());
    ends(&club.yard.folder, &["guard", "status"], 3);
}

#[test]
#[ignore = "needs git"]
fn the_checkup_tells_a_whole_and_guarded_clone_from_one_that_is_not() {
    let club = Club::new();
    assert!(ends(&club.folder, &["checkup"], 1).contains("mend      pre-commit"));
    club.guard(&["install"]);
    ends(&club.folder, &["checkup"], 0);
    club.remark("one");
    club.committed("one");
    for (name, option, told) in [
        ("cut", "--depth=1", "mend      history"),
        ("thin", "--filter=blob:none", "mend      old files"),
        ("some", "--sparse", "mend      checkout"),
    ] {
        let clone = club.yard.clone(name, &[option]);
        ends(&clone, &["guard", "install"], 0);
        let said = ends(&clone, &["checkup"], 1);
        assert!(said.contains(told), "{said}");
        assert_eq!(said.matches("mend").count(), if name == "some" { 2 } else { 1 }, "{said}");
    }
    let server = club.server();
    club.passes(&["push", "--quiet", "origin", "main"]);
    let said = ends(&server, &["checkup"], 0);
    assert!(said.contains("well      pre-receive"), "{said}");
    done(&club.folder, &["update-index", "--split-index"]);
    let said = ends(&club.folder, &["checkup"], 1);
    assert!(said.contains("mend      index") && said.contains("--no-split-index"), "{said}");
}

#[test]
#[ignore = "needs git"]
fn the_checkup_tells_of_the_clock_the_format_and_what_git_is_told_to_do() {
    let club = Club::guarded();
    write(&club.folder, ".gitattributes", "*.yaml merge=union\nboats/*.yaml diff=tholebook\n");
    let said = ends(&club.folder, &["checkup"], 1);
    assert!(said.contains("merge=union holds for"), "{said}");
    write(&club.folder, ".gitattributes", "*.yaml diff=tholebook merge=tholebook\n");
    assert!(ends(&club.folder, &["checkup"], 1).contains("in this clone: not set"));
    ends(&club.folder, &["wire"], 0);
    ends(&club.folder, &["checkup"], 0);
    let text = fs::read_to_string(club.folder.join("club.yaml")).expect("a club");
    write(&club.folder, "club.yaml", &text.replace("logbook: 1", "logbook: 2"));
    assert!(ends(&club.folder, &["checkup"], 1).contains("mend      format"));
    done(&club.folder, &["restore", "club.yaml"]);
    let date = "--date=2199-01-01T00:00:00Z";
    done(
        &club.folder,
        &["commit", "--quiet", "--no-verify", "--allow-empty", date, "--message", "x"],
    );
    ends(&club.folder, &["checkup"], 0);
    let mut git = std::process::Command::new("git");
    git.env("GIT_COMMITTER_DATE", "2099-01-01T00:00:00Z").env("GIT_CONFIG_GLOBAL", "/dev/null");
    git.args(["-c", "user.name=Ines Marlow", "-c", "user.email=ines@example.org"]);
    git.args(["commit", "--quiet", "--no-verify", "--allow-empty", "--message", "ahead"]);
    assert!(git.current_dir(&club.folder).status().expect("git is here").success());
    let said = ends(&club.folder, &["checkup", "--format", "json"], 1);
    let json: serde_json::Value = serde_json::from_str(&said).expect("JSON");
    let checks = json["checks"].as_array().expect("a list");
    let clock = checks.iter().find(|one| one["what"] == "clock").expect("a clock");
    assert_eq!(clock["state"], "mend", "{said}");
    assert!(club.folder.join(CREW).is_file() && club.folder.join(BOAT).is_file());
    ends(&club.yard.folder, &["checkup"], 3);
}

#[cfg(unix)]
#[test]
#[ignore = "needs git"]
fn a_clone_of_somebody_else_is_told_with_the_line_that_trusts_it() {
    let club = Club::new();
    let git = club.folder.join(".git");
    let given = |path: &Path| std::os::unix::fs::chown(path, Some(54_321), Some(54_321)).is_ok();
    if ![&club.folder, &git].into_iter().all(|path| given(path)) {
        // Only root may give a folder away.
        return;
    }
    for words in [&["checkup"][..], &["guard", "install"], &["guard", "status"]] {
        let told = ends(&club.folder, words, 3);
        assert!(told.contains("git config --global --add safe.directory"), "{told}");
    }
    assert!(!git.join("hooks/pre-commit").exists());
}
