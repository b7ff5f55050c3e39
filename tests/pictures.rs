//! The pictures of the README are drawn from the example club as it is.
//! `PICTURES=write cargo test --test pictures` draws them anew.

use std::fs;
use std::path::Path;

use tholebook::reading;
use tholebook::reports;
use tholebook::reports::Report;
use tholebook::rules;
use tholebook::rules::Check;
use tholebook::store;
use tholebook::units::Date;

/// The drawings of Kittiwake that are shown.
const SHOWN: [&str; 2] = ["plan", "pitch-3"];

fn file_of(id: &str) -> String {
    format!("example-club/pictures/kittiwake-{id}.svg")
}

fn drawn() -> Vec<(&'static str, String)> {
    let store = store::open_folder(Path::new("example-club")).expect("a book");
    let (book, faults) = reading::read(&store.name, store.files);
    let as_of = Date::read("2026-11-01").expect("a day");
    let mut checked = rules::check(&book, &faults, Check { as_of });
    checked.waive(&book, as_of);
    let report = Report { book: &book, checked: &checked, as_of, only: &[], earlier: None };
    let boat = book.boat("kittiwake").expect("the boat");
    let all = reports::drawings(&report, boat);
    let drawing = |id: &'static str| {
        let called = all.iter().find(|called| called.id == id).expect("a drawing");
        (id, called.drawing.svg())
    };
    SHOWN.into_iter().map(drawing).collect()
}

#[test]
fn the_pictures_show_the_example_club_as_it_is() {
    let writes = std::env::var_os("PICTURES").is_some_and(|word| word == "write");
    for (id, svg) in drawn() {
        let file = file_of(id);
        if writes {
            fs::create_dir_all("example-club/pictures").expect("a folder");
            fs::write(&file, &svg).expect("a written picture");
        }
        let old = fs::read_to_string(&file).unwrap_or_default();
        assert!(old == svg, "{file}: PICTURES=write cargo test --test pictures draws it anew");
    }
}

#[test]
fn the_readme_shows_each_of_them_with_words_for_who_cannot_see() {
    let readme = fs::read_to_string("README.md").expect("README.md");
    for id in SHOWN {
        let (before, _) = readme.split_once(&format!("]({})", file_of(id))).expect(id);
        let (_, words) = before.rsplit_once("![").expect("words");
        assert!(words.split_whitespace().count() >= 5, "{id}: {words}");
    }
}
