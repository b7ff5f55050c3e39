//! What a hook sees that git itself calls: the index, the commits and the folder that git means.

use std::fs;
use std::path::Path;
use std::path::PathBuf;
use std::process::Command;

use tholebook::store::Content;
use tholebook::store::Repository;

use crate::git::Yard;
use crate::git::done;
use crate::git::run;
use crate::git::write;

/// This very program, made to run one of its tests.
pub(crate) fn again(test: &str) -> Command {
    let mut child = Command::new(std::env::current_exe().expect("a test knows itself"));
    child.args(["--exact", test, "--ignored", "--nocapture"]);
    child
}

/// Puts a hook into a repository that lets one of these tests write down what it sees.
fn hook(git_dir: &Path, name: &str, test: &str) -> PathBuf {
    let seen = git_dir.join("seen");
    let program = std::env::current_exe().expect("a test knows itself");
    let text = format!(
        "#!/bin/sh\nSEEN='{}' exec '{}' --exact {test} --ignored --nocapture >&2\n",
        seen.display(),
        program.display()
    );
    let file = git_dir.join("hooks").join(name);
    fs::create_dir_all(git_dir.join("hooks")).expect("a folder");
    fs::write(&file, text).expect("a file");
    #[cfg(unix)]
    fs::set_permissions(&file, std::os::unix::fs::PermissionsExt::from_mode(0o755)).expect("ours");
    seen
}

fn taken(seen: &Path) -> String {
    let text = fs::read_to_string(seen).expect("the hook was run");
    fs::remove_file(seen).expect("it was there");
    text
}

/// Does its work when git runs it as a hook.
#[test]
#[ignore = "needs git"]
fn the_staged_book_seen_from_a_hook() {
    let Some(seen) = std::env::var_os("SEEN") else { return };
    let repository = Repository::from_environment(None).expect("it opens");
    let staged = repository.staged().expect("the index");
    let named = staged.files.iter().map(|named| match &named.content {
        Content::Text(text) => format!("{}={}", named.path, text.trim()),
        Content::Refused(refusal) => format!("{}: {refusal:?}", named.path),
    });
    let place = repository.below().expect("it is known by now");
    fs::write(seen, format!("{place}|{}", named.collect::<Vec<_>>().join(","))).expect("a file");
}

/// Does its work when git runs it as a hook.
#[test]
#[ignore = "needs git"]
fn the_pushed_commits_seen_from_a_hook() {
    let Some(seen) = std::env::var_os("SEEN") else { return };
    let repository = Repository::from_environment(None).expect("it opens");
    let pushed = std::io::read_to_string(std::io::stdin()).expect("lines of git");
    let told = pushed.lines().map(|line| {
        let words: Vec<&str> = line.split(' ').collect();
        let new = repository.commit(words[1]).expect("the pushed commit is there");
        let files = repository.at(new).expect("texts").files.len();
        let base = repository.commit(words[0]).ok();
        let base = base.and_then(|old| repository.merge_base(old, new).expect("an answer"));
        let walked = repository.walk(new).expect("a walk").len();
        format!("{} {files} {walked} {}", words[2], base.is_some())
    });
    fs::write(seen, told.collect::<Vec<_>>().join("\n")).expect("a file");
}

#[test]
#[ignore = "needs git"]
fn before_a_commit_the_book_is_what_that_commit_will_hold() {
    let yard = Yard::new();
    let folder = yard.club(&[]);
    let seen = hook(&folder.join(".git"), "pre-commit", "hooks::the_staged_book_seen_from_a_hook");
    write(&folder, "boats/a.yaml", "staged");
    done(&folder, &["add", "--all"]);
    write(&folder, "boats/a.yaml", "in the folder");
    write(&folder, "boats/b.yaml", "untracked");
    done(&folder, &["commit", "--message", "the index"]);
    assert_eq!(taken(&seen), "|boats/a.yaml=staged,club.yaml=");
    done(&folder, &["commit", "--all", "--message", "all"]);
    assert_eq!(taken(&seen), "|boats/a.yaml=in the folder,club.yaml=");
    write(&folder, "boats/a.yaml", "not this one");
    write(&folder, "boats/b.yaml", "this one");
    done(&folder, &["add", "--all"]);
    write(&folder, "boats/b.yaml", "this one as it is");
    done(&folder, &["commit", "--message", "one", "boats/b.yaml"]);
    assert_eq!(
        taken(&seen),
        "|boats/a.yaml=in the folder,boats/b.yaml=this one as it is,club.yaml="
    );
    done(&folder, &["-C", "boats", "commit", "--all", "--message", "from below"]);
    assert_eq!(
        taken(&seen),
        "|boats/a.yaml=not this one,boats/b.yaml=this one as it is,club.yaml="
    );
}

#[test]
#[ignore = "needs git"]
fn before_a_commit_in_a_linked_worktree_or_of_a_book_below_the_right_one_is_seen() {
    let yard = Yard::new();
    let folder = yard.club(&[]);
    done(&folder, &["worktree", "add", "--quiet", "../linked"]);
    let seen = hook(&folder.join(".git"), "pre-commit", "hooks::the_staged_book_seen_from_a_hook");
    let linked = yard.folder.join("linked");
    write(&linked, "boats/a.yaml", "linked");
    done(&linked, &["commit", "--all", "--message", "linked"]);
    assert_eq!(taken(&seen), "|boats/a.yaml=linked,club.yaml=");
    done(&linked, &["rm", "--quiet", "-r", "docs"]);
    done(&linked, &["mv", "-k", "boats", "club.yaml", "."]);
    fs::create_dir(linked.join("book")).expect("a folder");
    done(&linked, &["mv", "boats", "club.yaml", "book"]);
    done(&linked, &["commit", "--all", "--message", "moved"]);
    assert_eq!(taken(&seen), "book|boats/a.yaml=linked,club.yaml=");
}

#[test]
#[ignore = "needs git"]
fn before_a_push_is_taken_the_pushed_commits_are_seen_where_git_keeps_them_apart() {
    let yard = Yard::new();
    let folder = yard.club(&[]);
    done(&yard.folder, &["init", "--quiet", "--bare", "server.git"]);
    let server = yard.folder.join("server.git");
    let seen = hook(&server, "pre-receive", "hooks::the_pushed_commits_seen_from_a_hook");
    let push =
        |more: &[&str]| done(&folder, &[&["push", "--quiet", "../server.git"], more].concat());
    push(&["main"]);
    assert_eq!(taken(&seen), "refs/heads/main 2 3 false");
    write(&folder, "boats/b.yaml", "");
    done(&folder, &["add", "--all"]);
    done(&folder, &["commit", "--quiet", "--message", "b"]);
    done(&folder, &["tag", "--annotate", "--message=t", "spring"]);
    push(&["main", "spring"]);
    assert_eq!(taken(&seen), "refs/heads/main 3 4 true\nrefs/tags/spring 3 4 false");
    done(&folder, &["commit", "--quiet", "--amend", "--message", "again"]);
    push(&["--force", "main"]);
    assert_eq!(taken(&seen), "refs/heads/main 3 4 true");
    let refused = run(&folder, &["push", "../server.git", "main:refs/heads/x", "--atomic"]);
    assert!(refused.status.success());
    assert_eq!(taken(&seen), "refs/heads/x 3 4 false");
}
