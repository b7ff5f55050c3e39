//! The program as it is run: exit codes, formats, standard input, colours, a closed pipe.

use std::fs;
use std::io::Read as _;
use std::io::Write as _;
use std::path::Path;
use std::process::Command;
use std::process::Stdio;

use serde_json::Value;
use tempfile::TempDir;

const BOAT: &str = "boats/kittiwake.yaml";

/// A copy of the sound book in a folder of its own.
struct Club {
    folder: TempDir,
}

/// What a run came to.
struct Run {
    code: Option<i32>,
    out: String,
    err: String,
}

impl Club {
    fn new() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let from = Path::new("tests/data/sound-book");
        for path in ["club.yaml", BOAT, "oars/long-ash.yaml", "crews/masters-a.yaml"] {
            let to = folder.path().join(path);
            fs::create_dir_all(to.parent().expect("a folder")).expect("a new folder");
            fs::copy(from.join(path), to).expect("a copy");
        }
        Self { folder }
    }

    /// A book with nothing but `club.yaml`.
    fn empty() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        fs::write(folder.path().join("club.yaml"), "logbook: 1\n").expect("a new file");
        Self { folder }
    }

    fn path(&self, path: &str) -> std::path::PathBuf {
        self.folder.path().join(path)
    }

    fn text(&self, path: &str) -> String {
        fs::read_to_string(self.path(path)).expect("a text")
    }

    /// Changes the first `from` of a file.
    fn edit(self, path: &str, from: &str, to: &str) -> Self {
        let text = self.text(path);
        assert!(text.contains(from), "{path} does not hold {from:?}");
        fs::write(self.path(path), text.replacen(from, to, 1)).expect("a written file");
        self
    }

    /// With the first gap too tight: a danger.
    fn tight() -> Self {
        Self::new().edit(BOAT, "gap: 60", "gap: 55")
    }

    /// With a pin that leans: a fault.
    fn leaning() -> Self {
        Self::new().edit(BOAT, "lean: {aft: 0.5", "lean: {aft: 6")
    }

    fn command(&self, arguments: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
        command.args(arguments).current_dir(self.folder.path()).stdin(Stdio::null());
        for variable in ["NO_COLOR", "CLICOLOR_FORCE", "COLUMNS"] {
            command.env_remove(variable);
        }
        command
    }

    fn run(&self, arguments: &[&str]) -> Run {
        Run::of(&mut self.command(arguments))
    }

    fn lint(&self, arguments: &[&str]) -> Run {
        self.run(&[&["lint", "--as-of", "2026-11-01"], arguments].concat())
    }
}

impl Run {
    fn of(command: &mut Command) -> Self {
        let output = command.output().expect("the program runs");
        Self {
            code: output.status.code(),
            out: String::from_utf8(output.stdout).expect("UTF-8"),
            err: String::from_utf8(output.stderr).expect("UTF-8"),
        }
    }

    #[track_caller]
    fn ends(self, code: i32) -> Self {
        assert_eq!(self.code, Some(code), "out: {}\nerr: {}", self.out, self.err);
        self
    }
}

#[test]
fn a_sound_book_ends_with_0_and_nothing_on_standard_error() {
    let run = Club::new().lint(&[]).ends(0);
    assert!(run.out.starts_with("checked 1 boat, 1 oar set, 1 crew, "), "{}", run.out);
    assert_eq!(run.err, "");
}

#[test]
fn the_book_around_the_current_folder_is_found() {
    let club = Club::tight();
    let mut command = club.command(&["lint"]);
    command.current_dir(club.path("boats"));
    Run::of(&mut command).ends(1);
}

#[test]
fn a_book_is_named_by_its_folder() {
    let club = Club::tight();
    let folder = club.folder.path().to_str().expect("UTF-8");
    let elsewhere = tempfile::tempdir().expect("a folder");
    let mut command = club.command(&["lint", folder]);
    Run::of(command.current_dir(elsewhere.path())).ends(1);
}

#[test]
fn findings_end_with_1_from_the_failing_level_on() {
    let leaning = Club::leaning();
    leaning.lint(&[]).ends(1);
    for level in ["fault", "unsure", "note"] {
        leaning.lint(&["--fail-on", level]).ends(1);
    }
    for level in ["danger", "never"] {
        leaning.lint(&["--fail-on", level]).ends(0);
    }
}

#[test]
fn danger_ends_with_1_whatever_is_asked() {
    let tight = Club::tight();
    for level in ["danger", "fault", "unsure", "note", "never"] {
        tight.lint(&["--fail-on", level]).ends(1);
    }
}

#[test]
fn what_is_unsure_stops_nothing_unless_asked() {
    let unsure = Club::new().edit(BOAT, "lean: {aft: 0.5", "lean: {aft: 3");
    let only = ["--only", "kittiwake/seat-1/pin/lean"];
    assert!(unsure.lint(&only).ends(0).out.contains("1 unsure"));
    unsure.lint(&[&only[..], &["--fail-on", "unsure"]].concat()).ends(1);
}

#[test]
fn a_boat_out_of_use_stops_nothing_and_shows_everything() {
    let out = "class: surfboat\nout-of-use: {since: 2026-10-20, by: Ines Marlow, because: plank}";
    let run = Club::tight().edit(BOAT, "class: surfboat", out).lint(&[]).ends(0);
    assert!(run.out.contains("gap-too-tight"), "{}", run.out);
    assert!(run.out.contains("on boats out of use"), "{}", run.out);
}

#[test]
fn wrong_usage_ends_with_2() {
    let club = Club::new();
    for arguments in [
        &["--fail-on", "worry"][..],
        &["--as-of", "17.10.2026"],
        &["--width", "0"],
        &["--format", "pictures"],
        &["--name", BOAT],
        &["-"],
        &["one", "two"],
        &["--nonsense"],
    ] {
        let run = club.lint(arguments).ends(2);
        assert!(!run.err.is_empty() && run.out.is_empty(), "{arguments:?}: {}", run.out);
    }
    assert!(club.run(&[]).ends(2).err.contains("Usage"));
    club.run(&["launch"]).ends(2);
}

#[test]
fn settings_that_cannot_be_read_end_with_2_and_the_rest_is_judged() {
    for (from, to) in [("logbook: 1", "logbook: ["), ("callipers: 0.2", "calipers: 0.2")] {
        let run = Club::tight().edit("club.yaml", from, to).lint(&[]).ends(2);
        assert!(run.out.contains("gap-too-tight"), "{}", run.out);
        assert!(run.err.contains("club.yaml"), "{}", run.err);
    }
}

#[test]
fn a_record_that_cannot_be_read_does_not_hide_the_others() {
    let club = Club::tight();
    fs::write(club.path("boats/tern.yaml"), "boat: tern\nwund: light\n").expect("a new file");
    let run = club.lint(&["--format", "brief"]).ends(1);
    assert!(run.out.contains("boats/tern.yaml:2:1: fault unknown-key"), "{}", run.out);
    assert!(run.out.contains("boats/kittiwake.yaml:43:12: danger"), "{}", run.out);
}

#[test]
fn nothing_to_check_ends_with_3_unless_that_is_allowed() {
    let empty = Club::empty();
    let run = empty.lint(&[]).ends(3);
    assert!(run.err.contains("--allow-empty"), "{}", run.err);
    assert!(run.out.starts_with("checked 0 boats"), "{}", run.out);
    empty.lint(&["--allow-empty"]).ends(0);
}

#[test]
fn what_is_no_book_ends_with_3() {
    let folder = tempfile::tempdir().expect("a folder");
    let club = Club { folder };
    let run = club.lint(&[]).ends(3);
    assert!(run.err.contains("club.yaml"), "{}", run.err);
    club.lint(&["no-such-folder"]).ends(3);
    club.run(&["derive"]).ends(3);
}

#[cfg(unix)]
#[test]
fn a_file_that_may_not_be_read_ends_with_3_and_is_named() {
    use std::os::unix::fs::PermissionsExt as _;
    let club = Club::new();
    let shut = |mode| fs::set_permissions(club.path(BOAT), fs::Permissions::from_mode(mode));
    shut(0o000).expect("a changed mode");
    if fs::read(club.path(BOAT)).is_ok() {
        // Root reads everything; a socket can't be read by anybody.
        fs::remove_file(club.path(BOAT)).expect("a removed file");
        std::os::unix::net::UnixListener::bind(club.path(BOAT)).expect("a socket");
    }
    let run = club.lint(&[]).ends(3);
    assert!(run.err.contains(BOAT), "{}", run.err);
}

#[test]
fn only_what_is_asked_for_is_told_and_counts() {
    let club = Club::tight();
    club.lint(&["--only", "kittiwake/seat-2"]).ends(0);
    club.lint(&["--only", "kittiwake/seat-2", "--only", "kittiwake/seat-1"]).ends(1);
    let run = club.lint(&["--only", "*/*/spare"]).ends(1);
    assert!(run.out.contains("1 danger, 0 faults"), "{}", run.out);
    assert!(run.out.contains("nothing told but of */*/spare"), "{}", run.out);
    let run = club.lint(&["--only", "kitiwake"]).ends(2);
    assert!(run.err.contains("Did you mean kittiwake?"), "{}", run.err);
    club.lint(&["--only", "kittiwake/seat-9"]).ends(2);
    let run = club.lint(&["--only", "kittiwake/seat-1/rowlok"]).ends(0);
    assert!(run.err.contains("Nothing is written under kittiwake/seat-1/rowlok"), "{}", run.err);
}

#[test]
fn every_format_goes_to_standard_output_alone() {
    let club = Club::tight();
    for (format, begins) in [
        ("text", "gap-too-tight  kittiwake"),
        (
            "brief",
            "boats/kittiwake.yaml:43:12: danger gap-too-tight kittiwake/seat-1/rowlock/gap: ",
        ),
        ("json", "{\"format_version\":1,\"tool\":{\"name\":\"tholebook\""),
    ] {
        let run = club.lint(&["--format", format]).ends(1);
        assert!(run.out.starts_with(begins), "{format}: {}", run.out);
        assert_eq!(run.err, "", "{format}");
    }
    let out = club.lint(&["--format", "json"]).out;
    let report: Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!(report["as_of"], "2026-11-01");
}

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
    assert_eq!(run.out, format!("tholebook {}\n", env!("CARGO_PKG_VERSION")));
    let run = club.run(&["lint", "--help"]).ends(0);
    assert!(run.out.contains("Exit codes:"), "{}", run.out);
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

/// Spoken, a finding is one line of words: no drawing, no sign, no unit in short.
#[test]
fn spoken_findings_are_one_sentence_with_units_spelled_out() {
    let out = std::process::Command::new(env!("CARGO_BIN_EXE_tholebook"))
        .args(["lint", "example-club", "--as-of", "2026-11-01", "--spoken"])
        .output()
        .expect("the program runs");
    let text = String::from_utf8(out.stdout).expect("UTF-8");
    let gap = text.lines().find(|line| line.contains("oar B1")).expect("the tight gap");
    assert!(
        gap.starts_with("Danger. Gannet, seat 1: the gap clears oar B1 by 3.0 millimetres"),
        "{gap}"
    );
    assert!(gap.ends_with("See line 43 of boats/gannet.yaml."), "{gap}");
    let findings: Vec<&str> =
        text.lines().take_while(|line| !line.starts_with("checked")).collect();
    for line in findings {
        assert!(!line.contains(['±', '│', '╰']) && !line.contains(" mm"), "{line}");
    }
    assert_eq!(out.status.code(), Some(1));
}

/// `--also` writes the same findings in another format, whole, beside the report asked for.
#[test]
fn a_report_can_be_written_in_another_format_too() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("report.json");
    let also = format!("json={}", file.display());
    let run = |also: &str| {
        std::process::Command::new(env!("CARGO_BIN_EXE_tholebook"))
            .args([
                "lint",
                "example-club",
                "--as-of",
                "2026-11-01",
                "--format",
                "brief",
                "--also",
                also,
            ])
            .output()
            .expect("the program runs")
    };
    assert_eq!(run(&also).status.code(), Some(1));
    let written = std::fs::read_to_string(&file).expect("the report");
    let json: serde_json::Value = serde_json::from_str(&written).expect("JSON");
    assert_eq!(json["as_of"], "2026-11-01");
    let left: Vec<_> = std::fs::read_dir(folder.path()).expect("the folder").collect();
    assert_eq!(left.len(), 1, "nothing is left beside it");
    assert_eq!(run("json=/nowhere/at/all.json").status.code(), Some(3));
    assert_eq!(run("sarif").status.code(), Some(2));
}
