//! The pages of a book: what is written and what is left alone, what they tell, and that nothing
//! from a book is more than words on them.

#[path = "pages/club.rs"]
mod club;

use std::fs;
use std::os::unix::fs::symlink;
use std::path::Path;
use std::time::Duration;
use std::time::SystemTime;

use club::Club;
use club::names_in;

const BOAT: &str = "boats/kittiwake.yaml";
const PAGE: &str = "boat-kittiwake.html";

#[test]
fn every_record_has_a_page_and_every_link_leads_to_one() {
    let club = Club::example();
    let out = club.pages();
    let names = names_in(&out);
    for name in
        ["index.html", PAGE, "boat-turnstone.html", "oars-long-ash.html", "crew-juniors.html"]
    {
        assert!(names.contains(&name.to_owned()), "no {name} in {names:?}");
    }
    for name in names.iter().filter(|name| name.ends_with(".html")) {
        let text = fs::read_to_string(out.join(name)).expect("a page");
        let links = text.split("href=\"").skip(1).filter_map(|rest| rest.split('"').next());
        for link in links {
            let is_here =
                link.strip_prefix('#').is_some_and(|id| text.contains(&format!("id=\"{id}\"")));
            assert!(is_here || names.contains(&link.to_owned()), "{name} leads to {link}");
        }
    }
}

#[test]
fn a_page_that_is_as_it_should_be_is_not_written_again() {
    let club = Club::example();
    let out = club.pages();
    let old = SystemTime::UNIX_EPOCH + Duration::from_secs(1_000_000_000);
    for name in names_in(&out) {
        let file = fs::File::options().append(true).open(out.join(&name)).expect("a file");
        file.set_modified(old).expect("an old day");
    }
    let club = club.edit("boats/fulmar.yaml", "wind: light", "wind: none");
    let told = club.run(&out);
    assert!(told.out.contains("17 pages: 1 written, 16 unchanged, 0 taken away"), "{}", told.out);
    let modified =
        |name: &str| fs::metadata(out.join(name)).expect("a file").modified().expect("a day");
    assert_eq!(modified(PAGE), old);
    assert_eq!(modified(".tholebook-pages"), old);
    assert_ne!(modified("boat-fulmar.html"), old);
}

#[test]
fn the_page_of_a_boat_that_is_gone_is_taken_away_and_nothing_else() {
    let club = Club::example();
    let out = club.pages();
    fs::write(out.join("boat-of-my-own.html"), "mine").expect("a file");
    fs::remove_file(club.path("boats/gannet.yaml")).expect("it goes");
    let told = club.run(&out);
    assert!(told.out.contains("1 taken away"), "{}", told.out);
    let names = names_in(&out);
    assert!(!names.contains(&"boat-gannet.html".to_owned()));
    assert!(names.contains(&"boat-of-my-own.html".to_owned()));
}

#[test]
fn a_folder_that_it_did_not_make_is_left_as_it_is() {
    let club = Club::example();
    let out = club.beside("theirs");
    fs::create_dir(&out).expect("a folder");
    fs::write(out.join("index.html"), "theirs").expect("a file");
    let told = club.run(&out);
    assert_eq!((told.code, names_in(&out)), (Some(2), vec!["index.html".to_owned()]));
    assert!(told.err.contains("did not make it") && told.out.is_empty(), "{}", told.err);
    // Neither does a list of another making let it in.
    fs::write(out.join(".tholebook-pages"), "index.html\n").expect("a file");
    assert_eq!(club.run(&out).code, Some(2));
    assert_eq!(fs::read_to_string(out.join("index.html")).expect("a text"), "theirs");
}

#[test]
fn the_book_itself_ways_up_and_gits_own_files_are_refused() {
    let club = Club::example();
    let before = names_in(&club.path(""));
    for out in [
        club.path("pages"),
        club.path(""),
        club.path("boats"),
        club.beside("x").join("../y"),
        club.beside("z/.git/pages"),
    ] {
        let told = club.run(&out);
        assert_eq!(told.code, Some(2), "{} {}", out.display(), told.err);
        assert!(told.out.is_empty() && told.err.contains("No pages in"), "{}", told.err);
    }
    assert_eq!(names_in(&club.path("")), before);
    assert!(!club.beside("y").exists() && !club.beside("x").exists() && !club.beside("z").exists());
}

#[test]
fn links_are_refused_before_anything_is_written() {
    let club = Club::example();
    let (real, link) = (club.beside("real"), club.beside("link"));
    fs::create_dir(&real).expect("a folder");
    symlink(&real, &link).expect("a link");
    assert_eq!(club.run(&link).code, Some(2));
    assert!(names_in(&real).is_empty());
    // A link to the book from elsewhere is the book.
    let into = club.beside("into");
    symlink(club.path(""), &into).expect("a link");
    assert_eq!(club.run(&into.join("pages")).code, Some(2));
    assert!(!club.path("pages").exists());
    // A page that somebody made a link of leads nowhere.
    let out = club.pages();
    let precious = club.beside("precious");
    fs::write(&precious, "precious").expect("a file");
    fs::remove_file(out.join(PAGE)).expect("it goes");
    symlink(&precious, out.join(PAGE)).expect("a link");
    let club = club.edit("boats/fulmar.yaml", "wind: light", "wind: none");
    let fulmar = fs::read(out.join("boat-fulmar.html")).expect("a page");
    assert_eq!(club.run(&out).code, Some(2));
    assert_eq!(fs::read_to_string(&precious).expect("a text"), "precious");
    assert_eq!(fs::read(out.join("boat-fulmar.html")).expect("a page"), fulmar);
}

#[test]
fn a_list_that_names_files_elsewhere_takes_none_of_them_away() {
    let club = Club::example();
    let out = club.pages();
    let precious = club.beside("precious.html");
    fs::write(&precious, "precious").expect("a file");
    let list = out.join(".tholebook-pages");
    let text = fs::read_to_string(&list).expect("the list");
    let more = format!("../precious.html\n{}\n", precious.display());
    fs::write(&list, text + &more).expect("a file");
    assert_eq!(club.run(&out).code, Some(0));
    assert_eq!(fs::read_to_string(&precious).expect("a text"), "precious");
}

#[test]
fn a_book_outside_any_repository_has_its_pages_with_what_cant_be_told_said() {
    let club = Club::example();
    let out = club.pages();
    let page = |name: &str| fs::read_to_string(out.join(name)).expect("a page");
    assert!(page("index.html").contains("in no git repository that can be read"));
    assert!(page(PAGE).contains("Who set a value is not known"));
    assert!(page("changes.html").contains("What changed is not known"));
}

#[test]
fn what_was_not_measured_is_never_clear() {
    let club = Club::example().edit(BOAT, "gap: 60", "gap: not measured");
    let page = fs::read_to_string(club.pages().join(PAGE)).expect("a page");
    let row = page.split("gap, mm").nth(1).expect("a row").split("</td>").nth(1).expect("a cell");
    assert!(row.contains("not measured") && !row.contains("clear<"), "{row}");
    assert!(page.contains("Where the sums stop") && page.contains("no permission to launch"));
}

#[test]
fn the_work_of_a_boat_is_what_worklist_says_though_she_is_looked_at_alone() {
    let club = Club::example();
    let out = club.pages();
    let mut steps = 0;
    for id in ["kittiwake", "gannet", "fulmar", "sanderling", "turnstone"] {
        let json = club.told(&["worklist", id, "--format", "json", "--as-of", club::DAY]).out;
        let list: serde_json::Value = serde_json::from_str(&json).expect("JSON");
        let page = fs::read_to_string(out.join(format!("boat-{id}.html"))).expect("a page");
        for step in list["steps"].as_array().expect("steps") {
            let deed = step["do"].as_str().expect("a deed").replace('&', "&amp;");
            assert!(page.contains(&deed.replace('"', "&quot;")), "{id}: no {deed:?}");
            steps += 1;
        }
        let own = page.matches("Why: ").count();
        assert_eq!(own, list["steps"].as_array().expect("steps").len(), "{id}");
    }
    assert!(steps > 3, "{steps} steps are too few to tell");
}

#[test]
fn bodies_are_left_out_everywhere_unless_the_club_publishes_them() {
    let crew = "crews/masters-a.yaml";
    let club = Club::example();
    let text = fs::read_to_string(club.path(crew)).expect("a crew");
    assert!(text.contains("stature: 1780"), "{text}");
    let club = club.edit(crew, "stature: 1780", "stature: 1783.25");
    let out = club.pages();
    for name in names_in(&out) {
        let page = fs::read_to_string(out.join(&name)).expect("a page");
        assert!(!page.contains("1783") && !page.contains("mean stature of masters"), "{name}");
    }
    let club = club.edit("club.yaml", "publish-crew: false", "publish-crew: true");
    let page = fs::read_to_string(club.pages().join("crew-masters-a.html")).expect("a page");
    assert!(page.contains("1783.25"));
}

#[test]
fn nothing_from_a_book_is_more_than_words() {
    let club = Club::hostile();
    let out = club.pages();
    for name in names_in(&out) {
        let page = fs::read_to_string(out.join(&name)).expect("a page");
        for harm in
            ["<script", "<img", "\u{202e}", "\u{200b}", "\u{7}", "onerror=\"", "javascript:"]
        {
            assert!(!page.contains(harm), "{name} holds {harm:?}");
        }
        if name.ends_with(".html") {
            assert_eq!(page.matches("<style>").count(), 1, "{name}");
            assert!(page.contains("default-src 'none'"), "{name}");
        }
    }
    let index = fs::read_to_string(out.join("index.html")).expect("a page");
    assert!(index.contains("&lt;script&gt;"), "the name is told, escaped");
}

#[test]
fn a_book_without_boats_and_one_that_cant_be_had() {
    let club = Club::empty();
    let page = fs::read_to_string(club.pages().join("index.html")).expect("a page");
    assert!(page.contains("No boat in this book can be read"));
    let none = club.beside("nowhere");
    let told = club.told(&["pages", "--book", &none.display().to_string(), "--out", "x"]);
    assert_eq!(told.code, Some(3), "{}", told.err);
    assert!(!Path::new("x").exists());
}
