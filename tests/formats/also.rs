//! Reports written to files beside the one that is shown: whole or not at all, and never over a
//! record.

use std::fs;
use std::path::Path;

use crate::books::example;
use crate::books::folder;
use crate::books::lint_as;
use crate::club::BOAT;
use crate::run::lint_in;

const ALL: [&str; 7] = ["text", "brief", "json", "sarif", "junit", "markdown", "github"];

fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).expect("a folder").flatten();
    let mut names: Vec<String> =
        entries.map(|entry| entry.file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    names
}

#[test]
fn every_format_at_once_says_what_it_says_alone_and_leaves_nothing_else_behind() {
    let out = tempfile::tempdir().expect("a folder");
    let also: Vec<String> = ALL
        .iter()
        .map(|format| format!("{format}={}", out.path().join(format).display()))
        .collect();
    let also: Vec<&str> = also.iter().flat_map(|also| ["--also", also]).collect();
    let shown = example("brief", &also).ends(1);
    for format in ALL {
        let written = fs::read_to_string(out.path().join(format)).expect("a report");
        assert_eq!(written, example(format, &[]).out, "{format}");
    }
    assert_eq!(shown.out, example("brief", &[]).out);
    let mut all = ALL.map(str::to_owned);
    all.sort();
    assert_eq!(names(out.path()), all);
}

#[track_caller]
fn refused(book: &Path, from: &Path, file: &str) {
    let text = fs::read_to_string(book.join(BOAT)).expect("a boat");
    let settings = fs::read_to_string(book.join("club.yaml")).expect("settings");
    let also = format!("json={file}");
    let book_given = book.to_string_lossy();
    let run = lint_in(from, &[&*book_given, "--also", &also]).ends(2);
    assert!(run.out.is_empty() && run.err.contains("was not written"), "{}{}", run.out, run.err);
    assert_eq!(fs::read_to_string(book.join(BOAT)).expect("a boat"), text);
    assert_eq!(fs::read_to_string(book.join("club.yaml")).expect("settings"), settings);
}

#[test]
fn a_report_is_never_written_where_a_record_is_or_could_be() {
    let folder = folder(&[]);
    let book = folder.path();
    for file in [BOAT, "boats/../club.yaml", "waivers.yaml", "boats/new.yaml", "crews/a/b.yml"] {
        refused(book, book, file);
        refused(book, Path::new("/"), &book.join(file).to_string_lossy());
    }
    refused(book, &book.join("boats"), "kittiwake.yaml");
    assert!(!book.join("boats/new.yaml").exists());
    lint_as(book, "brief", &["--also", "json=report.json"]).ends(0);
    assert!(book.join("report.json").exists());
}

#[cfg(unix)]
#[test]
fn a_link_to_a_record_is_seen_through_and_a_link_to_a_file_stays() {
    use std::os::unix::fs::symlink;
    let folder = folder(&[]);
    let out = tempfile::tempdir().expect("a folder");
    symlink(folder.path().join(BOAT), out.path().join("boat")).expect("a link");
    refused(folder.path(), out.path(), "boat");
    fs::write(out.path().join("real"), "").expect("a file");
    symlink("real", out.path().join("link")).expect("a link");
    let also = format!("json={}", out.path().join("link").display());
    lint_as(folder.path(), "brief", &["--also", &also]).ends(0);
    assert!(out.path().join("link").is_symlink());
    assert!(fs::read_to_string(out.path().join("real")).expect("it").starts_with('{'));
}

#[test]
fn what_cannot_be_written_is_told_and_what_was_there_stays() {
    let book = folder(&[]);
    let out = tempfile::tempdir().expect("a folder");
    fs::create_dir(out.path().join("folder")).expect("a folder");
    for (file, why) in [("folder", "is no file"), ("none/report.json", "its folder is not there")] {
        let also = format!("json={}", out.path().join(file).display());
        let run = lint_as(book.path(), "brief", &["--also", &also]).ends(3);
        assert!(run.err.contains(why), "{}", run.err);
        assert!(run.out.starts_with("checked "), "{}", run.out);
    }
    assert_eq!(names(out.path()), ["folder"]);
}

#[test]
fn one_file_takes_one_report() {
    let book = folder(&[]);
    let out = book.path().join("out");
    let (json, sarif) = (format!("json={}", out.display()), "sarif=./out");
    let run = lint_as(book.path(), "brief", &["--also", &json, "--also", sarif]).ends(2);
    assert!(run.err.contains("two reports can't go into one file"), "{}", run.err);
    assert!(!out.exists());
}

#[test]
fn where_nothing_could_be_checked_the_file_says_so_or_is_not_written() {
    let out = tempfile::tempdir().expect("a folder");
    let run = lint_as(
        out.path(),
        "text",
        &["/no/such/book", "--also", "sarif=a", "--also", "json=b", "--also", "junit=c"],
    );
    let run = run.ends(3);
    assert!(run.err.contains("b was not written: there is nothing to report"), "{}", run.err);
    assert_eq!(names(out.path()), ["a", "c"]);
    let log = fs::read_to_string(out.path().join("a")).expect("a report");
    assert!(log.contains("\"executionSuccessful\":false"), "{log}");
}
