//! Every page opened in headless Chromium, as on a phone, on a screen and on paper, light and dark:
//! no error, no request, nothing cut, nothing over other words, nothing too faint, nothing that a
//! screen reader or a keyboard stumbles over. Needs Chromium, node, and two of its packages: see
//! `.ci/run`.

#[path = "pages/club.rs"]
mod club;

use std::fs;
use std::path::Path;
use std::process::Command;

use club::Club;
use club::names_in;

/// Runs a script over the pages of a folder; returns what it tells, on standard output and beside it.
fn looked(script: &str, folder: &Path) -> (String, String) {
    let mut look = Command::new("node");
    let output = look.arg(script).arg(folder).output().expect("node runs");
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("UTF-8");
    let told = text(output.stderr);
    assert!(output.status.success(), "{told}");
    (text(output.stdout), told)
}

/// Returns what a reader would stumble over, a line each.
fn stumbles(folder: &Path) -> String {
    let (stumbles, told) = looked("tests/pages/look.mjs", folder);
    assert!(told.contains("looked "), "{told}");
    stumbles
}

/// Returns the pages that take more sides of A4 than they may, a line each.
fn too_long(folder: &Path, most: usize) -> Vec<String> {
    let (told, _) = looked("tests/pages/sides.mjs", folder);
    assert_eq!(told.lines().count(), names_in(folder).len(), "{told}");
    let sides = |line: &str| line.rsplit(' ').next().and_then(|sides| sides.parse().ok());
    let is_not = |line: &&str| sides(line).is_none_or(|sides: usize| !(1..=most).contains(&sides));
    told.lines().filter(is_not).map(str::to_owned).collect()
}

#[test]
#[ignore = "needs Chromium"]
fn nobody_stumbles_over_the_pages_of_the_example() {
    assert_eq!(stumbles(&Club::example().pages()), "");
}

#[test]
#[ignore = "needs Chromium"]
fn nobody_stumbles_over_the_pages_of_a_club_with_two_seasons() {
    assert_eq!(stumbles(&Club::sample().pages()), "");
}

#[test]
#[ignore = "needs Chromium"]
fn nobody_stumbles_over_names_that_wish_to_be_more_than_words() {
    assert_eq!(stumbles(&Club::hostile().pages()), "");
}

#[test]
#[ignore = "needs Chromium"]
fn a_rig_card_is_one_side_of_paper_and_nobody_stumbles_over_it() {
    for club in [Club::example(), Club::hostile()] {
        let cards = club.sheets("cards", &[]);
        assert_eq!(too_long(&cards, 1), Vec::<String>::new());
        assert_eq!(stumbles(&cards), "");
    }
}

#[test]
#[ignore = "needs Chromium"]
fn a_page_to_write_on_is_a_sheet_of_paper_at_most_and_nobody_stumbles_over_it() {
    for club in [Club::example(), Club::hostile()] {
        for more in [&[][..], &["--last"], &["--twice"]] {
            let options = [&["--blank"], more].concat();
            let blanks = club.sheets(&options.join(""), &options);
            assert_eq!(too_long(&blanks, 2), Vec::<String>::new(), "{options:?}");
            assert_eq!(stumbles(&blanks), "", "{options:?}");
        }
    }
}

#[test]
#[ignore = "needs Chromium"]
fn a_page_with_every_fault_is_found_out() {
    let folder = tempfile::tempdir().expect("a folder");
    let page = "<!DOCTYPE html><html><head><title>t</title></head><body>\
        <p style='color:#bbb'>faint</p>\
        <p style='width:30px;overflow:hidden;white-space:nowrap'>this is cut short</p>\
        <p style='position:absolute;top:200px'>one over</p><p style='position:absolute;top:200px'>the other</p>\
        <p style='width:3000px'>wide</p><table><tr><td>1</td></tr></table>\
        <a href='#x' tabindex='3'>first</a><svg><text x='400' y='20'>beyond</text></svg>\
        <img src='elsewhere.png'><script>throw new Error('a fault')</script></body></html>";
    fs::write(folder.path().join("index.html"), page).expect("a file");
    let told = stumbles(folder.path());
    for kind in [
        "too-faint",
        "\"cut\"",
        "overlapping",
        "wider-than-the-page",
        "table-without-headers",
        "keyboard-order",
        "drawing-without-words",
        "request",
        "console",
        "axe-html-has-lang",
    ] {
        assert!(told.contains(kind), "no {kind} in {told}");
    }
}
