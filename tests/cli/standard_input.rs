//! A text that comes from standard input.

use std::io::Write as _;
use std::path::Path;
use std::process::Stdio;

use crate::run::BOAT;
use crate::run::Club;
use crate::run::Run;

fn with_input(club: &Club, folder: &Path, arguments: &[&str], input: &[u8]) -> Run {
    let mut command = club.command(arguments);
    command.current_dir(folder);
    command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
    let mut child = command.spawn().expect("the program runs");
    let mut stdin = child.stdin.take().expect("a pipe");
    // A run that needs no input may end before it is written.
    let _ = stdin.write_all(input);
    drop(stdin);
    let output = child.wait_with_output().expect("the program ends");
    let text = |bytes| String::from_utf8(bytes).expect("UTF-8");
    Run { code: output.status.code(), out: text(output.stdout), err: text(output.stderr) }
}

#[test]
fn a_text_comes_from_standard_input_in_place_of_its_file() {
    let club = Club::new();
    let tight = club.text(BOAT).replacen("gap: 60", "gap: 55", 1);
    let root = club.folder.path().to_owned();
    let boats = club.path("boats");
    let elsewhere = tempfile::tempdir().expect("a folder");
    let book = root.to_str().expect("UTF-8");
    let whole = club.path(BOAT);
    let whole = whole.to_str().expect("UTF-8");
    for (folder, arguments) in [
        (root.as_path(), &["lint", "--name", BOAT, "-"][..]),
        (boats.as_path(), &["lint", "--name", "kittiwake.yaml", "-"]),
        (boats.as_path(), &["lint", "--name", BOAT, "-"]),
        (elsewhere.path(), &["lint", book, "--name", BOAT, "-"]),
        (elsewhere.path(), &["lint", "--name", whole, "-", book]),
    ] {
        let run = with_input(&club, folder, arguments, tight.as_bytes()).ends(1);
        assert!(run.out.contains("[boats/kittiwake.yaml:43:12]"), "{arguments:?}: {}", run.out);
    }
    club.lint(&[]).ends(0);
}

#[test]
fn a_text_that_is_no_file_yet_is_read_beside_the_others() {
    let club = Club::new();
    let input = b"boat: tern\nwund: light\n";
    let arguments = ["lint", "--format", "brief", "--name", "boats/tern.yaml", "-"];
    let run = with_input(&club, club.folder.path(), &arguments, input).ends(1);
    assert!(run.out.contains("boats/tern.yaml:2:1: fault unknown-key"), "{}", run.out);
    assert!(run.out.contains("checked 2 boats"), "{}", run.out);
}

#[test]
fn a_text_outside_the_books_folders_is_wrong_usage() {
    let club = Club::new();
    for path in ["notes.yaml", "../boats/kittiwake.yaml", "boats/kittiwake.txt"] {
        let arguments = ["lint", "--name", path, "-"];
        let run = with_input(&club, club.folder.path(), &arguments, b"").ends(2);
        assert!(run.err.contains("is no file of this book"), "{path}: {}", run.err);
    }
}
