//! A book that means harm: whatever it says, no format steers a terminal or gives orders to a build
//! server.

use std::fs;
use std::path::Path;

use tempfile::TempDir;
use tholebook::reports::shown::is_hidden;

use crate::books::folder;
use crate::books::lint_as;
use crate::club::BOAT;
use crate::github::commands;
use crate::junit;
use crate::markdown::rows;
use crate::run::Run;
use crate::run::TODAY;
use crate::run::lint_in;
use crate::sarif::run_of;

/// As it stands between the quotes of a YAML text.
const HARM: &str = r"\x1b[2J\u202e\n::error file=x::owned\r\n##[error]y ##vso[task.complete]z ::stop-commands::t [command]rm ]]> <script>alert(1)</script> | ` \u0085::warning::\u2028::notice::q [a](http://b) @ines &amp; ${{x}} {0}";

/// The same where no escape is read: what git or a file's name can hold.
const IN_A_NAME: &str = "\u{1b}[2J\n::error::owned ##[error]y ##vso[z]w ]]> <b>| ` \u{202e} %0A";

/// A book whose every text means harm.
fn book() -> TempDir {
    let boat = include_str!("../data/sound-book/boats/kittiwake.yaml");
    let long = format!("{HARM}{}", "::error::".repeat(34));
    let boat = boat
        .replacen("name: Kittiwake", &format!("name: \"{long}\""), 1)
        .replacen("by: Ines Marlow", &format!("by: \"{HARM}\""), 1)
        .replacen("gap: 60", "gap: 55", 1)
        .replacen("wind: light", &format!("wind: light\n  \"{HARM}\": 1"), 1)
        + &format!("defects:\n  - {{found: 2026-10-03, what: \"{HARM}\", state: unfit}}\n")
        + &format!("knocks:\n  - {{date: 2026-10-30, what: \"{HARM}\", where: [seat-3]}}\n")
        + &format!("\"::error::{HARM}\": 1\n# ::error::x ##[error]y\n");
    let club = format!(
        "logbook: 1\nclub: \"{HARM}\"\nlimits:\n  surfboat:\n    clearance: {{least: 6, source: \"{HARM}\"}}\n"
    );
    let waivers = format!(
        "- {{finding: \"{HARM}\", rule: gap-too-loose, because: \"{HARM}\", by: \"{HARM}\", until: 2026-11-20}}\n\
         - {{finding: kittiwake/rigged/date, rule: overdue, because: \"{HARM}\", by: \"{HARM}\", until: 2026-12-20, at: 60}}\n"
    );
    let folder = folder(&[(BOAT, &boat), ("club.yaml", &club), ("waivers.yaml", &waivers)]);
    if cfg!(unix) {
        let name = format!("boats/{IN_A_NAME}.yaml").replace("::error::owned ", "::error::o/");
        let path = folder.path().join(name);
        fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        fs::write(path, "boat: [\n").expect("a file");
        fs::write(folder.path().join("boats").join(format!("{IN_A_NAME:.20}")), "")
            .expect("a file");
        fs::write(folder.path().join("::error::x.yaml"), "").expect("a file");
    }
    folder
}

/// Every way of asking for a report.
fn asked() -> Vec<Vec<&'static str>> {
    let formats = ["text", "brief", "json", "sarif", "junit", "markdown", "github"];
    let mut asked: Vec<Vec<&str>> = formats.map(|format| vec!["--format", format]).into();
    for width in ["20", "33", "47", "80", "1000"] {
        asked.push(vec!["--width", width]);
        asked.push(vec!["--width", width, "--glyphs", "ascii"]);
    }
    asked.push(vec!["--spoken"]);
    asked.push(vec!["--format", "sarif", "--show-waived"]);
    asked.push(vec!["--format", "github", "--show-waived"]);
    asked
}

#[track_caller]
fn harmless(run: &Run, of_github: bool, asked: &[&str]) {
    for text in [&run.out, &run.err] {
        let steers = |c: char| c != '\n' && is_hidden(c);
        assert!(!text.contains(steers), "{asked:?}: {:?}", text.find(steers));
        let in_brackets = text.match_indices("##").find(|(at, _)| {
            let rest = text[at + 2..].trim_start_matches(|c: char| c.is_ascii_alphabetic());
            rest.starts_with('[')
        });
        assert_eq!(in_brackets, None, "{asked:?}");
    }
    let obeyed =
        |text: &str| text.lines().filter(|line| line.trim_start().starts_with("::")).count();
    assert_eq!(obeyed(&run.err), 0, "{asked:?}: {}", run.err);
    if of_github {
        let told = commands(&run.out);
        assert!(told.iter().all(|one| ["error", "warning", "notice"].contains(&&*one.kind)));
        assert!(told.len() > 5 && told.len() <= 11, "{told:?}");
        let marks = run.out.lines().filter(|line| line.starts_with("::"));
        assert!(marks.clone().all(|line| line.matches("::").count() == 2));
    } else {
        assert_eq!(obeyed(&run.out), 0, "{asked:?}: {}", run.out);
    }
}

#[test]
fn no_format_holds_a_control_character_or_an_order_to_a_build_server() {
    let book = book();
    for asked in asked() {
        let run = lint_in(book.path(), &[&["--as-of", TODAY], &*asked].concat());
        assert!(run.out.len() > 1000, "{asked:?}: {}{}", run.out, run.err);
        harmless(&run, asked.contains(&"github"), &asked);
    }
}

#[test]
fn the_harm_is_there_and_told_in_full() {
    let run = lint_as(book().path(), "json", &[]);
    let json = run.json();
    let said = json["findings"].as_array().expect("a list").iter().any(|finding| {
        let message = finding["message"].as_str().expect("a message");
        message.contains("::error file=x::owned") && message.contains("##vso[task.complete]z")
    });
    assert!(said, "the JSON holds the true text: {json}");
}

#[test]
fn the_machine_formats_stay_what_they_are() {
    let book = book();
    let lint = |format| lint_as(book.path(), format, &[]);
    let run = run_of(&lint("sarif"));
    assert!(run["results"].as_array().expect("a list").len() > 5);
    for result in run["results"].as_array().expect("a list") {
        let text = result["message"]["text"].as_str().expect("a text");
        assert!(!text.contains("[a](") && !text.contains('\n'), "{text}");
        assert!(!text.contains("@ines") || text.contains("\\[a\\]("), "{text}");
    }
    junit::read(&lint("junit").out);
    let page = lint("markdown").out;
    assert!(!page.contains('<') && !page.contains("@ines") && !page.contains("http://"), "{page}");
    let told = rows(&page, "Findings");
    assert_eq!(told.len(), lint("json").json()["findings"].as_array().expect("a list").len());
    assert!(told.iter().all(|row| row.len() == 6), "{told:?}");
}

#[test]
fn arguments_give_no_orders_either() {
    let harm = "x\n::error::owned ##[error]y \u{1b}[2J";
    let book = folder(&[]);
    let also = format!("json={harm}/x");
    let asked: [&[&str]; 6] = [
        &["--only", harm],
        &["--at", harm],
        &["--since", harm],
        &["--format", harm],
        &["--also", &also],
        &[harm],
    ];
    for asked in asked {
        for format in [&[][..], &["--format", "junit"], &["--format", "sarif"]] {
            if asked[0] == "--format" && !format.is_empty() {
                continue;
            }
            let run = lint_in(book.path(), &[asked, format].concat());
            assert_ne!(run.code, Some(0));
            harmless(&run, false, asked);
        }
    }
}

#[test]
fn a_folder_gives_no_orders_by_its_name() {
    if cfg!(unix) {
        let outer = tempfile::tempdir().expect("a folder");
        let inner = outer.path().join(IN_A_NAME.replace('/', ""));
        let book = folder(&[]);
        fs::rename(book.path(), &inner).expect("another name");
        fs::create_dir(book.path()).expect("what is removed in the end");
        for asked in asked().into_iter().filter(|asked| !asked.contains(&"github")) {
            let run = lint_in(Path::new(&inner), &asked);
            harmless(&run, false, &asked);
        }
    }
}
