//! What shells are given: completions, the manual, the version.

use std::fs;
use std::process::Command;

fn run(words: &[&str]) -> String {
    let output = Command::new(env!("CARGO_BIN_EXE_tholebook")).args(words).output();
    let output = output.expect("it runs");
    assert!(output.status.success(), "{words:?}: {output:?}");
    String::from_utf8(output.stdout).expect("UTF-8")
}

/// Returns the commands that the help shows.
fn commands() -> Vec<String> {
    let help = run(&["--help"]);
    let (_, list) = help.split_once("Commands:\n").expect("a list of commands");
    let (list, _) = list.split_once("\n\n").expect("the end of the list");
    let name = |line: &str| {
        let indent = line.len() - line.trim_start().len();
        (indent == 2).then(|| line.split_whitespace().next().map(str::to_owned)).flatten()
    };
    list.lines().filter_map(name).collect()
}

#[test]
fn every_shell_is_told_every_command() {
    let commands = commands();
    assert!(commands.len() > 15, "{commands:?}");
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        let text = run(&["completions", shell]);
        for command in &commands {
            assert!(text.contains(command.as_str()), "{shell} is not told of {command}");
        }
    }
}

#[test]
fn the_manual_has_a_page_for_every_command() {
    let folder = tempfile::tempdir().expect("a folder");
    let out = folder.path().to_str().expect("UTF-8");
    let said = run(&["man", "--out", out]);
    for command in commands() {
        let page = folder.path().join(format!("tholebook-{command}.1"));
        let text = fs::read_to_string(&page).expect("a page");
        assert!(text.contains(&format!("tholebook\\-{command}")), "{text}");
        assert!(said.contains(&format!("tholebook-{command}.1")), "{said}");
    }
    assert!(run(&["man"]).contains(".TH tholebook 1"));
}

#[test]
fn the_version_names_the_commit_where_it_is_known() {
    let version = run(&["--version"]);
    let rest = version.trim().strip_prefix(concat!("tholebook ", env!("CARGO_PKG_VERSION")));
    let rest = rest.expect("the version comes first");
    let head = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(".git/HEAD");
    let is_commit = |text: &str| {
        let id = text.strip_prefix(" (").and_then(|id| id.strip_suffix(')'));
        id.is_some_and(|id| id.len() == 8 && id.bytes().all(|byte| byte.is_ascii_hexdigit()))
    };
    assert!(if head.is_file() { is_commit(rest) } else { rest.is_empty() || is_commit(rest) });
}
