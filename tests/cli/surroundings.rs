//! The terminal, the variables, the clock and the reader at the other end.

use serde_json::Value;
use std::fs;
use std::io::Read as _;
use std::process::Stdio;

use crate::run::BOAT;
use crate::run::Club;
use crate::run::Run;

#[test]
fn what_is_not_read_is_told_on_standard_error() {
    let club = Club::new();
    fs::write(club.path("tern.yaml"), "boat: tern\n").expect("a new file");
    let run = club.lint(&[]).ends(0);
    assert!(run.err.starts_with("Not read: tern.yaml."), "{}", run.err);
}

#[test]
fn the_option_the_variables_and_the_pipe_decide_about_colour() {
    let club = Club::tight();
    let coloured = |arguments: &[&str], set: &[(&str, &str)]| {
        let mut command = club.command(&[&["lint"], arguments].concat());
        command.envs(set.iter().copied());
        Run::of(&mut command).ends(1).out.contains('\u{1b}')
    };
    assert!(!coloured(&[], &[]));
    assert!(coloured(&["--color", "always"], &[("NO_COLOR", "1"), ("TERM", "dumb")]));
    assert!(!coloured(&["--color", "never"], &[("CLICOLOR_FORCE", "1")]));
    assert!(coloured(&[], &[("CLICOLOR_FORCE", "1")]));
    assert!(!coloured(&[], &[("CLICOLOR_FORCE", "0")]));
    assert!(!coloured(&[], &[("CLICOLOR_FORCE", "1"), ("NO_COLOR", "1")]));
    assert!(coloured(&[], &[("CLICOLOR_FORCE", "1"), ("NO_COLOR", "")]));
    assert!(!coloured(&["--format", "json", "--color", "always"], &[]));
}

#[test]
fn the_width_comes_from_the_option_else_from_the_surroundings() {
    let club = Club::tight();
    let widest = |arguments: &[&str], columns: &str| {
        let mut command = club.command(&[&["lint"], arguments].concat());
        let out = Run::of(command.env("COLUMNS", columns)).ends(1).out;
        let lines = out.lines().filter(|line| !line.starts_with("checked "));
        lines.map(|line| line.chars().count()).max().unwrap_or_default()
    };
    assert!(widest(&[], "64") <= 64);
    assert!(widest(&[], "120") > 80);
    assert!(widest(&["--width", "60"], "120") <= 60);
    assert!((70..=80).contains(&widest(&[], "nonsense")));
}

#[test]
fn a_reader_that_stops_reading_changes_no_exit_code() {
    let club = Club::new();
    // More than a pipe holds, so that the program is still writing when the reader goes.
    let many: String = (0..3000).map(|n| format!("wund-{n}: 1\n")).collect();
    let club = club.edit(BOAT, "name: Kittiwake\n", &format!("name: Kittiwake\n{many}"));
    let mut command = club.command(&["lint", "--format", "brief"]);
    command.stdout(Stdio::piped()).stderr(Stdio::piped());
    let mut child = command.spawn().expect("the program runs");
    let mut first = [0_u8; 16];
    let mut stdout = child.stdout.take().expect("a pipe");
    stdout.read_exact(&mut first).expect("the first bytes");
    drop(stdout);
    let output = child.wait_with_output().expect("the program ends");
    assert_eq!(output.status.code(), Some(1));
    assert_eq!(String::from_utf8_lossy(&output.stderr), "");
}

#[test]
fn wrong_arguments_cannot_steer_the_terminal() {
    let run = Club::new().run(&["lint", "--format", "\u{1b}[2J"]).ends(2);
    assert!(!run.err.contains('\u{1b}'), "{:?}", run.err);
    let run = Club::new().lint(&["\u{1b}[2J\nx"]).ends(3);
    assert!(!run.err.contains('\u{1b}'), "{:?}", run.err);
}

#[test]
fn today_is_the_day_of_the_place_where_the_program_runs() {
    let club = Club::new();
    let day = |zone: &str| {
        let mut command = club.command(&["lint", "--format", "json"]);
        let out = Run::of(command.env("TZ", zone)).out;
        let report: Value = serde_json::from_str(&out).expect("JSON");
        report["as_of"].as_str().expect("a day").to_owned()
    };
    // Fourteen hours before and twelve after: never the same day.
    assert_ne!(day("XXX-14"), day("XXX12"));
}
