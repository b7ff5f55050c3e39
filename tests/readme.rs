//! The README's table of rules is the list of rules, and what it shows of the commands is what they
//! say. `TABLE=write cargo test --test readme` writes the table anew.

use std::collections::BTreeSet;
use std::path::Path;
use std::process::Command;

use tholebook::rules::Looks;
use tholebook::rules::RULES;
use tholebook::rules::Rule;

const BEGIN: &str = "<!-- rules: written by tests/readme.rs -->\n";
const END: &str = "<!-- end of rules -->\n";

fn row(rule: &&Rule) -> String {
    let checks = rule.checks.trim_end_matches('.').replace('|', "\\|");
    format!("| `{}` | {} | {checks} |\n", rule.id, rule.level.word())
}

/// Returns what rules are about that look neither at a seat, a boat nor the book: they stand in one
/// row, for each says by its name what it is.
fn together(rule: &Rule) -> Option<&'static str> {
    match rule.looks {
        Looks::WhileReading => Some("How a record is written"),
        Looks::WhileWaiving => Some("How a waiver stands"),
        Looks::BesideEarlier => Some("What differs from an earlier state"),
        _ => None,
    }
}

fn table() -> String {
    let mut rows: String = RULES.iter().filter(|rule| together(rule).is_none()).map(row).collect();
    let abouts = RULES.iter().filter_map(|rule| together(rule)).collect::<BTreeSet<_>>();
    for about in abouts {
        let some: Vec<_> = RULES.iter().filter(|rule| together(rule) == Some(about)).collect();
        let worst = some.iter().map(|rule| rule.level).max().expect("a rule").word();
        let ids: Vec<String> = some.iter().map(|rule| format!("`{}`", rule.id)).collect();
        rows += &format!("| {} | {worst} | {about}: `why RULE` says each |\n", ids.join(" "));
    }
    format!("| rule | at worst | what it checks |\n|---|---|---|\n{rows}")
}

#[test]
fn the_readme_lists_every_rule_as_it_is() {
    let readme = std::fs::read_to_string("README.md").expect("README.md");
    let (before, rest) = readme.split_once(BEGIN).expect("the mark before the table");
    let (old, after) = rest.split_once(END).expect("the mark after the table");
    let new = table();
    if std::env::var_os("TABLE").is_some_and(|word| word == "write") {
        let text = format!("{before}{BEGIN}{new}{END}{after}");
        std::fs::write("README.md", text).expect("README.md can be written");
        return;
    }
    assert_eq!(old, new, "TABLE=write cargo test --test readme writes the table anew");
}

#[test]
fn the_readme_stays_short() {
    let readme = std::fs::read_to_string("README.md").expect("README.md");
    assert!(readme.lines().count() < 250, "{} lines", readme.lines().count());
}

/// One command of the README and the lines that it shows of the output.
struct Shown<'r> {
    arguments: Vec<&'r str>,
    lines: Vec<&'r str>,
}

/// Returns the words of a command line; what stands in quotes is one.
fn words_of(line: &str) -> Vec<&str> {
    let parts = line.split('"').enumerate();
    let mut words = Vec::new();
    for (number, part) in parts {
        match number % 2 {
            1 => words.push(part),
            _ => words.extend(part.split_whitespace()),
        }
    }
    words
}

fn shown(readme: &str) -> Vec<Shown<'_>> {
    let mut all: Vec<Shown> = Vec::new();
    let blocks = readme.split("```text\n").skip(1);
    for block in blocks.filter_map(|rest| rest.split("```").next()) {
        for line in block.lines().filter(|line| !line.trim().is_empty()) {
            match line.strip_prefix("$ tholebook ") {
                Some(words) => {
                    let arguments = words_of(words);
                    all.push(Shown { arguments, lines: Vec::new() });
                }
                None if block.starts_with("$ ") => {
                    let last = all.last_mut().expect("a block begins with its command");
                    last.lines.push(line);
                }
                None => {}
            }
        }
    }
    all
}

fn output(folder: &Path, arguments: &[&str]) -> String {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    command.args(arguments).current_dir(folder).env("COLUMNS", "80").env("NO_COLOR", "1");
    let output = command.output().expect("the program runs");
    assert!(matches!(output.status.code(), Some(0 | 1)), "{arguments:?}: {}", output.status);
    String::from_utf8(output.stdout).expect("text")
}

fn copied(from: &Path, to: &Path) {
    std::fs::create_dir_all(to).expect("a folder");
    for entry in std::fs::read_dir(from).expect("a folder") {
        let path = entry.expect("an entry").path();
        let to = to.join(path.file_name().expect("a name"));
        if path.is_dir() {
            copied(&path, &to);
        } else {
            std::fs::copy(&path, &to).expect("a copy");
        }
    }
}

#[test]
fn every_command_of_the_readme_says_what_is_shown() {
    let readme = std::fs::read_to_string("README.md").expect("README.md");
    let folder = tempfile::tempdir().expect("a folder");
    copied(Path::new("example-club"), &folder.path().join("example-club"));
    let commands = shown(&readme);
    assert!(commands.len() >= 10, "only {} commands", commands.len());
    for Shown { arguments, lines } in commands {
        let said = output(folder.path(), &arguments);
        let mut left = said.lines();
        for line in lines {
            let found = left.any(|own| own.trim_end() == line.trim_end());
            assert!(
                found,
                "tholebook {}: no line {line:?} in order in\n{said}",
                arguments.join(" ")
            );
        }
    }
}
