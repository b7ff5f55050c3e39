//! Dangers whose record went away: nobody mended them.

use crate::club::BOAT;
use crate::club::Files;
use crate::club::edit;
use crate::club::sound;
use crate::run::before_and_after as club;
use crate::run::read_again;
use crate::run::told;
use crate::run::unfit;

const FULMAR: &str = "boats/fulmar.yaml";
const HULL: &str = "danger walk-round fulmar/rigged/walk-round/hull";

/// The sound book with a second boat, made of a book's only one.
fn with_fulmar(of: &Files) -> Files {
    let mut files = sound();
    let second = of[BOAT].replace("boat: kittiwake", "boat: fulmar");
    files.insert(FULMAR.to_owned(), second.replace("name: Kittiwake", "name: Fulmar"));
    files
}

#[test]
fn a_danger_stands_when_its_record_is_taken_away_or_hidden() {
    let before = with_fulmar(&unfit());
    for to in [None, Some("boats/fulmar.txt"), Some("boats/.d/fulmar.yaml")] {
        let mut after = before.clone();
        let text = after.remove(FULMAR).expect("it was there");
        after.extend(to.map(|path| (path.to_owned(), text)));
        let club = club(&before, &after);
        let since = ["--since", "HEAD~1", "--only", "fulmar"];
        let run = told(&club, &since).ends(1);
        let found = run.found();
        assert!(found.contains(&format!("known {HULL}")), "{to:?}: {found:?}");
        assert!(!found.iter().any(|one| one.starts_with("cured")), "{to:?}: {found:?}");
        assert!(run.out.contains("fulmar is no longer in the book"), "{}", run.out);
        let text = crate::run::lint(&club, &since).ends(1);
        assert!(text.out.contains("gone with a record"), "{}", text.out);
        assert!(text.out.contains("out-of-use"), "{}", text.out);
    }
}

#[test]
fn a_boat_recorded_as_out_of_use_or_in_order_may_be_taken_away() {
    let mut unused = unfit();
    let out = "out-of-use: {since: 2026-10-20, by: Tomas Reyne, because: stove in}\nrigged:";
    edit(&mut unused, BOAT, "", "rigged:", out);
    for before in [with_fulmar(&unused), with_fulmar(&sound())] {
        let club = club(&before, &sound());
        let run = told(&club, &["--since", "HEAD~1", "--only", "fulmar"]).ends(0);
        assert_eq!(run.found(), [""; 0]);
    }
}

#[test]
fn a_record_in_another_file_of_the_book_is_the_same_and_mended_there_it_is_cured() {
    let before = with_fulmar(&unfit());
    let mut mended = sound();
    read_again(&mut mended, 29, "rigged/walk-round/hull");
    let mut after = with_fulmar(&mended);
    let text = after.remove(FULMAR).expect("it was there");
    after.insert("boats/heavy/f.yml".to_owned(), text);
    let club = club(&before, &after);
    let run = told(&club, &["--since", "HEAD~1", "--only", "fulmar"]).ends(0);
    assert!(run.found().contains(&format!("cured {HULL}")), "{:?}", run.found());
}

#[test]
fn a_record_that_is_not_read_for_its_name_is_a_check_not_made() {
    for path in ["boats/fulmar.txt", "boats/.d/fulmar.yaml", "boats/.fulmar", "oars/f.yaml.bak"] {
        let mut after = with_fulmar(&unfit());
        let text = after.remove(FULMAR).expect("it was there");
        after.insert(path.to_owned(), text);
        after.insert("boats/photos.txt".to_owned(), "the boats: at home\n".to_owned());
        let club = club(&sound(), &after);
        for at in [&[][..], &["--at", "HEAD"], &["--since", "HEAD~1"]] {
            let run = told(&club, at);
            let json = run.json();
            let not_checked = json["not_checked"].as_array().expect("a list").iter();
            let names: Vec<&str> = not_checked.filter_map(|one| one["name"].as_str()).collect();
            assert!(names.contains(&path), "{path} {at:?}: {names:?}");
            assert!(!names.contains(&"boats/photos.txt"), "{names:?}");
            assert!(run.err.contains(&format!("Not read: {path}.")), "{}", run.err);
        }
    }
}
