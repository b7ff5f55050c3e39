//! `guard` and `checkup` in a repository that no git program made: what is written, what is not, and
//! how each ends. What git makes of the hooks is tried in `with_git`.

use std::fs;
use std::io::Write as _;
use std::path::Path;
use std::path::PathBuf;
use std::process::Command;
use std::process::Stdio;

use tempfile::TempDir;

struct Book {
    _kept: TempDir,
    folder: PathBuf,
}

/// An invented club's repository.
fn sample() -> Book {
    let kept = tempfile::tempdir().expect("a folder");
    let folder = fs::canonicalize(kept.path()).expect("it was just made").join("book");
    let (code, said) = run(kept.path(), &["sample", &folder.display().to_string()], "");
    assert_eq!(code, Some(0), "{said}");
    Book { _kept: kept, folder }
}

fn run(folder: &Path, words: &[&str], input: &str) -> (Option<i32>, String) {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    for name in ["GIT_DIR", "GIT_INDEX_FILE", "GIT_WORK_TREE", "GIT_OBJECT_DIRECTORY"] {
        command.env_remove(name);
    }
    command.env("GIT_CONFIG_GLOBAL", "/dev/null").current_dir(folder).args(words);
    command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
    let mut child = command.spawn().expect("it begins");
    let mut pipe = child.stdin.take().expect("a pipe");
    let _ = pipe.write_all(input.as_bytes());
    drop(pipe);
    let output = child.wait_with_output().expect("it ends");
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    (output.status.code(), text(&output.stdout) + &text(&output.stderr))
}

#[track_caller]
fn ends(book: &Book, words: &[&str], code: i32) -> String {
    let (ended, said) = run(&book.folder, words, "");
    assert_eq!(ended, Some(code), "{words:?}: {said}");
    said
}

/// Every hook with its text; samples that a template brought are none.
fn hooks(book: &Book) -> Vec<(String, String)> {
    let Ok(entries) = fs::read_dir(book.folder.join(".git/hooks")) else { return Vec::new() };
    let mut hooks: Vec<(String, String)> = entries
        .flatten()
        .map(|entry| {
            let text = fs::read_to_string(entry.path()).expect("a text");
            (entry.file_name().to_string_lossy().into_owned(), text)
        })
        .collect();
    hooks.retain(|(name, _)| !name.ends_with(".sample"));
    hooks.sort();
    hooks
}

#[test]
fn three_hooks_are_put_in_place_once_and_taken_away_again() {
    let book = sample();
    assert!(ends(&book, &["guard", "status"], 1).contains("not installed"));
    let said = ends(&book, &["guard", "install"], 0);
    assert!(said.contains("is no gate") && said.contains("cherry-pick"), "{said}");
    let first = hooks(&book);
    let names: Vec<&str> = first.iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(names, ["pre-commit", "pre-merge-commit", "pre-push"]);
    let program = format!("program='{}'\n", env!("CARGO_BIN_EXE_tholebook"));
    assert!(first.iter().all(|(_, text)| text.contains(&program)), "{first:?}");
    let said = ends(&book, &["guard", "install", "--book", "."], 0);
    assert_eq!(said.matches("is there already").count(), 3, "{said}");
    assert_eq!(hooks(&book), first);
    assert!(ends(&book, &["guard", "status"], 0).contains("is no gate"));
    ends(&book, &["guard", "remove"], 0);
    assert!(hooks(&book).is_empty());
    assert!(ends(&book, &["guard", "remove"], 0).contains("was not there"));
}

#[test]
fn a_folder_of_hooks_that_is_not_the_repositorys_own_is_left_alone() {
    for (set, why) in [("/nowhere/hooks", "leads out"), ("tools", "among the files")] {
        let book = sample();
        let git = git2::Repository::open(&book.folder).expect("a repository");
        git.config().and_then(|mut own| own.set_str("core.hooksPath", set)).expect("it is set");
        let said = ends(&book, &["guard", "install"], 2);
        assert!(said.contains(why) && said.contains("' guard commit --book '.' || exit"), "{said}");
        assert!(hooks(&book).is_empty() && !book.folder.join("tools").exists());
    }
}

#[test]
fn outside_of_a_repository_there_is_nothing_to_guard() {
    let book = sample();
    fs::remove_dir_all(book.folder.join(".git")).expect("it was there");
    for what in ["install", "remove", "status"] {
        ends(&book, &["guard", what], 3);
    }
    let said = ends(&book, &["checkup"], 3);
    assert!(said.contains("not seen  repository"), "{said}");
    ends(&book, &["guard"], 2);
}

#[test]
fn the_gate_refuses_what_it_cannot_read() {
    let book = sample();
    let id = "1".repeat(40);
    for (input, why) in [
        (String::new(), "Git said nothing"),
        (format!("{id} {id}\n"), "can't be read"),
        (format!("{id} {id} refs/heads/main\n"), "main: refused"),
    ] {
        let (code, said) = run(&book.folder, &["guard", "receive"], &input);
        assert_eq!(code, Some(3), "{input:?}: {said}");
        assert!(said.contains(why) && said.contains("nothing of this push was taken"), "{said}");
        assert!(said.is_ascii(), "{said}");
    }
}

#[test]
fn the_checkup_has_one_line_a_thing_and_the_same_as_json() {
    let book = sample();
    ends(&book, &["guard", "install"], 0);
    let (code, text) = run(&book.folder, &["checkup"], "");
    let (_, json) = run(&book.folder, &["checkup", "--format", "json"], "");
    let json: serde_json::Value = serde_json::from_str(&json).expect("JSON");
    let checks = json["checks"].as_array().expect("a list");
    assert_eq!(checks.len(), text.lines().count());
    for (check, line) in checks.iter().zip(text.lines()) {
        let state = check["state"].as_str().expect("a word");
        assert!(line.starts_with(&format!("{state:<9} ")), "{line}");
        // On a machine whose clock is before the invented season, that is told.
        assert!(state == "well" || check["what"] == "clock", "{line}");
    }
    let is_well = checks.iter().all(|check| check["state"] == "well");
    assert_eq!(code, Some(if is_well { 0 } else { 1 }), "{text}");
    assert_eq!(json["format_version"], 1);
}
