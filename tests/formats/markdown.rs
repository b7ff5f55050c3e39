//! The page of a job.

use std::fmt::Write as _;

use crate::books::all_states;
use crate::books::example;
use crate::books::folder;
use crate::books::lint_as;

/// Returns the cells of every row below a heading.
pub(crate) fn rows(page: &str, heading: &str) -> Vec<Vec<String>> {
    let lines = page.lines().skip_while(|line| *line != format!("### {heading}"));
    let table = lines.skip(2).take_while(|line| line.starts_with('|')).skip(2);
    table.map(cells).collect()
}

/// Splits a row where a reader of Markdown does: at every bar that has no backslash before it.
fn cells(row: &str) -> Vec<String> {
    let mut cells = vec![String::new()];
    let mut chars = row.chars();
    while let Some(c) = chars.next() {
        let last = cells.last_mut().expect("a cell");
        match c {
            '\\' => last.extend(['\\'].into_iter().chain(chars.next())),
            '|' => cells.push(String::new()),
            _ => last.push(c),
        }
    }
    cells[1..cells.len() - 1].iter().map(|cell| cell.trim().to_owned()).collect()
}

#[test]
fn the_verdict_comes_first_then_the_worst_then_what_was_not_checked_then_the_cautions() {
    let page = example("markdown", &[]).ends(1).out;
    let lines: Vec<&str> = page.lines().collect();
    assert_eq!(lines[0], "## Boat book example-club, as of 2026-11-01");
    assert_eq!(lines[2], "**Does not pass: 13 findings at or above fault.**");
    assert!(lines[4].starts_with("checked 5 boats, 4 oar sets"), "{}", lines[4]);
    let json = example("json", &[]).json();
    let (told, not_checked) = (rows(&page, "Findings"), rows(&page, "Not checked"));
    assert_eq!(told.len(), json["findings"].as_array().expect("a list").len());
    assert_eq!(not_checked.len(), json["not_checked"].as_array().expect("a list").len());
    let letters: String = told.iter().map(|row| &row[0][..1]).collect();
    let worst_first = letters.trim_start_matches('D').trim_start_matches('F');
    assert!(worst_first.trim_start_matches('U').trim_start_matches('N').is_empty(), "{letters}");
    let caution = |words: &str| page.rfind(words).expect("a caution");
    assert!(caution("no permission to launch") > page.find("### Not checked").expect("it"));
    assert!(caution("Lift every oar out by hand") > 0 && caution("Cold-bending") > 0);
}

#[test]
fn a_book_in_order_says_what_was_looked_for() {
    let page = lint_as(folder(&[]).path(), "markdown", &[]).ends(0).out;
    assert!(page.contains("\n**Nothing found at or above fault.**\n"), "{page}");
    assert!(!page.contains("### Findings"), "{page}");
    assert!(page.contains("no permission to launch"), "{page}");
}

#[test]
fn what_was_cured_has_a_table_of_its_own() {
    let page = lint_as(all_states().path(), "markdown", &["--since", "HEAD~1"]).ends(1).out;
    let cured = rows(&page, "Cured");
    assert!(cured.iter().any(|row| row[2] == "kittiwake/seat-3/rowlock/gap"), "{cured:?}");
    let states: Vec<String> =
        rows(&page, "Findings").into_iter().map(|row| row[0].clone()).collect();
    for state in ["D danger (new)", "D danger (worse)", "D danger (known)"] {
        assert!(states.iter().any(|own| own == state), "{state} in {states:?}");
    }
}

#[test]
fn a_page_that_would_be_too_long_is_cut_after_a_whole_row_and_says_how_many_are_left_out() {
    let mut text = String::from("boat: petrel\nclass: surfboat\n");
    for number in 0..4000 {
        let _ = writeln!(text, "odd-{number}-{}: 1", "x".repeat(150));
    }
    let folder = folder(&[("boats/petrel.yaml", &text)]);
    let page = lint_as(folder.path(), "markdown", &[]).ends(1).out;
    assert!(page.len() < 1_000_000 && page.len() > 900_000, "{}", page.len());
    let told = rows(&page, "Findings");
    assert!(told.iter().all(|row| row.len() == 6 && !row[5].is_empty()));
    let json = lint_as(folder.path(), "json", &[]).json();
    let count = |key: &str| json[key].as_array().expect("a list").len();
    let left_out = count("findings") + count("not_checked") - told.len();
    assert!(left_out > 1000, "{left_out}");
    assert!(page.contains(&format!("\n**{left_out} rows left out: ")), "{left_out}");
    assert!(page.trim_end().ends_with("by hand before going afloat."), "the cautions stay");
}

#[test]
fn what_could_not_be_had_is_no_verdict_on_the_book() {
    let page = lint_as(std::path::Path::new("/"), "markdown", &["/no/such/book"]).ends(3).out;
    assert!(page.contains("**Could not be checked.**") && page.contains("/no/such/book"), "{page}");
    assert!(!page.contains("0 dangers"), "{page}");
}
