//! What is told, in which format, and where it goes.

use serde_json::Value;

use crate::run::Club;

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
