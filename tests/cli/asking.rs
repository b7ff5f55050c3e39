//! Rules, worked-out values and help.

use serde_json::Value;

use crate::run::Club;
use crate::run::Run;

#[test]
fn a_rule_is_explained_and_an_unknown_one_is_not() {
    let club = Club::new();
    let run = club.run(&["why", "gap-too-tight"]).ends(0);
    assert!(run.out.contains("Where the sums stop"), "{}", run.out);
    let run = club.run(&["why", "gap-to-tight"]).ends(2);
    assert!(run.err.contains("Did you mean gap-too-tight?") && run.out.is_empty(), "{}", run.err);
    let run = club.run(&["why", "\u{1b}[2J"]).ends(2);
    assert!(!run.err.contains('\u{1b}'), "{:?}", run.err);
}

#[test]
fn the_rules_are_listed() {
    let run = Club::new().run(&["rules"]).ends(0);
    assert!(run.out.lines().any(|line| line.starts_with("gap-too-tight ")), "{}", run.out);
}

#[test]
fn worked_out_values_come_as_a_table_or_as_json() {
    let club = Club::new();
    let run = club.run(&["derive"]).ends(0);
    assert!(run.out.contains("clearance") && run.out.contains("8.0 ± 0.3"), "{}", run.out);
    let run = club.run(&["derive", "kittiwake", "--format", "json"]).ends(0);
    let report: Value = serde_json::from_str(&run.out).expect("JSON");
    assert_eq!(report["boats"][0]["boat"], "kittiwake");
    let elsewhere = tempfile::tempdir().expect("a folder");
    let folder = club.folder.path().to_str().expect("UTF-8");
    let mut command = club.command(&["derive", "--book", folder]);
    Run::of(command.current_dir(elsewhere.path())).ends(0);
}

#[test]
fn a_boat_that_is_not_there_is_wrong_usage_and_the_nearest_is_offered() {
    let run = Club::new().run(&["derive", "kitiwake"]).ends(2);
    assert!(run.err.contains("Did you mean kittiwake?"), "{}", run.err);
    Club::empty().run(&["derive"]).ends(3);
}

#[test]
fn version_and_help_are_results() {
    let club = Club::new();
    let run = club.run(&["--version"]).ends(0);
    let commit = checked_out().map_or_else(String::new, |id| format!(" ({})", &id[..8]));
    assert_eq!(run.out, format!("tholebook {}{commit}\n", env!("CARGO_PKG_VERSION")));
    let run = club.run(&["lint", "--help"]).ends(0);
    assert!(run.out.contains("Exit codes:"), "{}", run.out);
}

/// Returns the commit that these sources were checked out from; `None` in an unpacked archive and
/// in a linked worktree, whose program says the version alone.
fn checked_out() -> Option<String> {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(".git");
    let head = git2::Repository::open(folder.is_dir().then_some(folder)?).ok()?;
    let commit = head.head().ok()?.peel_to_commit().ok()?;
    Some(commit.id().to_string())
}
