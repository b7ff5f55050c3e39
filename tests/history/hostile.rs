//! Names and words of strangers are shown, never obeyed.

use git2::Signature;
use git2::Time;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::GAP;
use crate::club::edit;
use crate::club::person;
use crate::club::sound;
use crate::run::json;
use crate::run::run;

const ODD: &str = "I\u{1b}[31mnes\u{202e} | M`arlow\u{200b}";

fn odd_club() -> Club {
    let club = Club::new();
    let odd = Signature::new(ODD, "a@example.org", &Time::new(1_767_225_600, 0)).expect("a person");
    let mut files = sound();
    let by = format!("by: \"{}\"", "R\\e[2Jeyne\\u202e");
    edit(&mut files, BOAT, "rigged:", "by: Ines Marlow", &by);
    let first = club.commit_by(&odd, &person("x", 1), &[], &files);
    club.check_out(first, &files);
    club
}

#[test]
fn no_format_steers_the_terminal() {
    let club = odd_club();
    for command in [["history", GAP], ["blame", "kittiwake"], ["history", "kittiwake"]] {
        for format in ["text", "json", "markdown"] {
            let mut arguments = command.to_vec();
            arguments.extend(["--format", format]);
            let run = run(&club, &arguments);
            assert_eq!(run.code, Some(0), "{}", run.err);
            let hidden = |c: char| c.is_control() && c != '\n' || "\u{202e}\u{200b}".contains(c);
            assert!(!run.out.contains(hidden) && !run.err.contains(hidden), "{}", run.out);
        }
    }
    assert_eq!(json(&club, &["history", GAP])["rows"][0]["author"], ODD);
}

#[test]
fn no_author_and_no_value_gives_orders_to_a_build_server() {
    let club = Club::new();
    let odd = Signature::new("I ::error::x ##[error]M", "a@x", &Time::new(1_767_225_600, 0));
    let odd = odd.expect("a person");
    let mut files = sound();
    edit(&mut files, BOAT, "rigged:", "by: Ines Marlow", "by: \"::error::R ##vso[x]M\"");
    let first = club.commit_by(&odd, &odd, &[], &files);
    club.check_out(first, &files);
    for arguments in [&["history", "kittiwake/rigged"][..], &["blame", "kittiwake"]] {
        for format in ["text", "json", "markdown"] {
            for width in ["20", "80"] {
                let more = ["--format", format, "--width", width];
                let run = run(&club, &[arguments, &more].concat());
                let begins = |line: &str| line.trim_start().starts_with("::");
                assert!(!run.out.lines().any(begins), "{}", run.out);
                assert!(!run.out.contains("##[") && !run.out.contains("##vso["), "{}", run.out);
            }
        }
    }
    assert_eq!(json(&club, &["history", GAP])["rows"][0]["author"], "I ::error::x ##[error]M");
}

#[test]
fn a_text_of_several_lines_stays_on_its_own() {
    let club = Club::new();
    let mut files = sound();
    let knock = "knocks:\n  - {date: 2026-10-18, what: \"rolled\\n| FORGED row\"}\n";
    files.get_mut(BOAT).expect("the boat").push_str(knock);
    club.line(&[files]);
    for command in [["history", "kittiwake/knocks"], ["blame", "kittiwake"]] {
        for format in ["text", "markdown"] {
            let run = run(&club, &[command[0], command[1], "--format", format]);
            assert!(run.out.contains("rolled"), "{}", run.out);
            assert!(!run.out.lines().any(|line| line.trim_start().starts_with("| FORGED")));
        }
    }
}

#[test]
fn an_author_that_is_no_utf_8_is_shown_as_far_as_can_be() {
    let club = Club::new();
    let tree = club.tree(&sound());
    let mut bytes = format!("tree {tree}\nauthor Ren").into_bytes();
    bytes.extend(b"\xe9 \x07<r@x> 1767225600 +0000\ncommitter  <> 1767225600 +0000\n\n\xff\n");
    let odb = club.git.odb().expect("objects");
    let id = odb.write(git2::ObjectType::Commit, &bytes).expect("a commit");
    club.check_out(id, &sound());
    let author = json(&club, &["history", GAP])["rows"][0]["author"].clone();
    assert!(author.as_str().expect("an author").starts_with("Ren\u{fffd}"), "{author}");
}

#[test]
fn an_odd_name_is_refused_without_steering_the_terminal() {
    let club = odd_club();
    let refused = run(&club, &["history", "kitti\u{1b}[2Jwake"]);
    assert_eq!(refused.code, Some(2));
    assert!(refused.err.contains("\\u{1b}") && !refused.err.contains('\u{1b}'));
}
