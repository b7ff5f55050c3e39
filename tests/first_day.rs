//! `example-club/FIRST-DAY.md` shows what the program really says on a club's first rigging day.
//! `SCREENS=write cargo test --test first_day` writes its screens anew.
#![cfg(unix)]

mod first_day {
    pub(crate) mod ground;
    pub(crate) mod page;
}

use std::fs;

use first_day::ground::Ground;
use first_day::page::Page;

const PAGE: &str = "example-club/FIRST-DAY.md";

fn page() -> String {
    fs::read_to_string(PAGE).expect("the page")
}

#[test]
fn the_first_day_goes_as_its_page_shows_it() {
    let text = page();
    let ground = Ground::new();
    let anew = Page::of(&text).with_screens(|screen| ground.said(screen));
    if std::env::var_os("SCREENS").is_some_and(|word| word == "write") {
        fs::write(PAGE, anew).expect("the page can be written");
        return;
    }
    assert_eq!(text, anew, "SCREENS=write cargo test --test first_day writes the screens anew");
    let [here, example] = ground.sums_here_and_in("example-club");
    assert!(here[0]["seats"][3]["worked_out"]["pitch_deg"]["number"].is_f64(), "{here}");
    assert_eq!(here, example, "the same readings, the same sums");
}

#[test]
fn every_line_of_a_screen_fits_on_eighty_columns() {
    let text = page();
    let page = Page::of(&text);
    assert!(page.screens().count() >= 7, "too few screens");
    for line in page.screens().flat_map(|screen| screen.shown.lines()) {
        assert!(line.chars().count() <= 80, "{} columns: {line}", line.chars().count());
    }
}

#[test]
fn the_answers_of_the_oars_are_shown_as_they_are() {
    let answers = fs::read_to_string("tests/data/first-day/oars.txt").expect("the answers");
    let text = page();
    let (_, shown) = text.split_once("```text\n").expect("a block");
    let (shown, _) = shown.split_once("…\n```").expect("its end");
    assert!(shown.lines().count() > 10 && answers.starts_with(shown), "{shown}");
}
