//! `diff`, `history` and `blame` in checkouts that are not whole.

use std::fs;
use std::path::Path;
use std::process::Command;

use crate::git::Yard;
use crate::git::done;

/// A clone of the sound book, two commits long, without the folder of the oars.
fn sparse(yard: &Yard, kind: &str) -> std::path::PathBuf {
    done(&yard.folder, &["init", "--quiet", "--initial-branch=main", "book"]);
    let club = yard.folder.join("book");
    let from = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/sound-book");
    let texts = ["club.yaml", "boats/kittiwake.yaml", "oars/long-ash.yaml", "crews/masters-a.yaml"];
    for path in texts {
        let to = club.join(path);
        fs::create_dir_all(to.parent().expect("a folder")).expect("a new folder");
        fs::copy(from.join(path), to).expect("a copy");
    }
    done(&club, &["add", "--all"]);
    done(&club, &["commit", "--quiet", "--message", "the book"]);
    done(&club, &["sparse-checkout", "set", "--cone", kind, "boats", "crews"]);
    assert!(!club.join("oars").exists(), "the checkout is not sparse");
    club
}

fn run(club: &Path, words: &[&str]) -> (Option<i32>, String, String) {
    let mut program = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    let output = program.args(words).arg("--book").arg(club).output().expect("the program runs");
    let text = |bytes: Vec<u8>| String::from_utf8_lossy(&bytes).into_owned();
    (output.status.code(), text(output.stdout), text(output.stderr))
}

#[test]
#[ignore = "needs git"]
fn what_a_sparse_checkout_keeps_out_was_not_taken_out() {
    let yard = Yard::new();
    let club = sparse(&yard, "--no-sparse-index");
    let (code, out, err) = run(&club, &["diff"]);
    assert_eq!(code, Some(0), "{err}");
    assert!(out.contains("Nothing changed"), "{out}");
    assert!(err.contains("oars/long-ash.yaml") && err.contains("sparse-checkout disable"), "{err}");
    let (code, out, err) = run(&club, &["blame", "long-ash"]);
    assert!(code == Some(0) && !out.contains("not committed"), "{out}{err}");
    assert!(err.contains("This checkout is sparse"), "{err}");
    let (code, out, err) = run(&club, &["history", "long-ash/A1/inboard", "--format", "json"]);
    assert!(code == Some(0) && !out.contains("taken-out"), "{out}{err}");
}

#[test]
#[ignore = "needs git"]
fn an_index_that_is_cut_short_is_refused_with_the_command_that_helps() {
    let yard = Yard::new();
    let club = sparse(&yard, "--sparse-index");
    for words in [&["diff"][..], &["blame", "long-ash"], &["history", "long-ash/A1/inboard"]] {
        let (code, out, err) = run(&club, words);
        assert_eq!((code, &*out), (Some(3), ""), "{words:?} {err}");
        assert!(err.contains("sparse-checkout reapply --no-sparse-index"), "{err}");
    }
}
