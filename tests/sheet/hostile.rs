//! Text from a book is text on every page and in every drawing.

use tholebook::reports;
use tholebook::reports::Asked;
use tholebook::reports::shown::is_hidden;
use tholebook::rules::Edit;

use super::page::BOAT;
use super::page::blank;
use super::page::sheet;
use super::page::with;

const NAMES: [&str; 5] = [
    "<script>alert(1)</script>",
    "\"><img src=x onerror=alert(1)>",
    "</title></style></svg><b>",
    "abc\u{202e}xyz\u{200b}",
    "' onload='x",
];

/// The name, the level mark, who measured, a defect and a note, all the same.
fn pages_of(name: &str) -> Vec<String> {
    let quoted = format!("\"{}\"", name.replace('"', "\\\""));
    let is = |key: &str| format!("{key}: {quoted}");
    let texts = [is("name"), format!("{{where: {quoted},"), is("by"), is("wind")];
    let defect = format!("seats:\n  - seat: 1\n    note: {quoted}");
    let found =
        format!("defects:\n  - {{found: 2026-10-03, what: {quoted}, state: watch}}\nseats:\n");
    let edits: Vec<Edit> = vec![
        (BOAT, "", "seats:\n  - seat: 1", leak(&defect)),
        (BOAT, "", "seats:\n", leak(&found)),
        (BOAT, "", "name: Kittiwake", leak(&texts[0])),
        (BOAT, "", "{where: after edge of thwart 2,", leak(&texts[1])),
        (BOAT, "", "by: Ines Marlow", leak(&texts[2])),
        (BOAT, "", "wind: light", leak(&texts[3])),
        ("club.yaml", "", "club: Tarrow Head Boat Club", leak(&is("club"))),
    ];
    let mut all = vec![sheet(&edits)];
    all.extend(
        [(false, false), (true, false), (false, true)]
            .map(|(last, twice)| blank(&edits, Asked { last, twice })),
    );
    let drawings = with(&edits, |report| reports::drawings(report, &report.book.boats[0]));
    all.extend(drawings.into_iter().map(|called| called.drawing.svg()));
    all
}

fn leak(text: &str) -> &'static str {
    Box::leak(text.to_owned().into_boxed_str())
}

/// The names of all elements, and every attribute's name.
fn marks(text: &str) -> Vec<String> {
    let mut found = Vec::new();
    for element in text.split('<').skip(1) {
        let inside = element.split('>').next().unwrap_or_default();
        let outside_of_quotes: String = inside.split('"').step_by(2).collect();
        found.extend(outside_of_quotes.split_whitespace().map(str::to_owned));
    }
    found.sort();
    found.dedup();
    found
}

#[test]
fn no_text_of_a_book_becomes_an_element_or_an_attribute() {
    let plain: Vec<Vec<String>> = pages_of("Kittiwake").iter().map(|page| marks(page)).collect();
    for name in NAMES {
        let pages = pages_of(name);
        assert_eq!(pages.len(), plain.len());
        for (page, plain) in pages.iter().zip(&plain) {
            assert_eq!(&marks(page), plain, "{name:?}");
        }
    }
}

#[test]
fn hidden_signs_are_written_out() {
    for page in pages_of(NAMES[3]) {
        let hidden: Vec<char> = page.chars().filter(|c| *c != '\n' && is_hidden(*c)).collect();
        assert!(hidden.is_empty(), "{hidden:?}");
    }
    assert!(pages_of(NAMES[3])[0].contains("\\u{202e}"));
}

#[test]
fn a_name_of_three_hundred_letters_is_cut_everywhere() {
    let name = "Kittiwakeland ".repeat(22);
    for page in pages_of(name.trim()) {
        assert!(!page.contains(name.trim()), "{page}");
        let runs = page.split(['<', '>']).filter(|run| run.contains("Kittiwakeland"));
        for run in runs {
            assert!(run.matches("Kittiwakeland").count() < 22, "{run}");
        }
    }
}

#[test]
fn no_page_asks_for_anything_from_outside_or_runs_anything() {
    for page in pages_of("Kittiwake") {
        for word in
            ["<script", "<link", "<img", "<iframe", "<object", "@import", "url(", "href", "src="]
        {
            assert!(!page.contains(word), "{word}");
        }
        let addresses = page.matches("http").count();
        let namespaces = page.matches("xmlns=\"http://www.w3.org/2000/svg\"").count();
        let policy = page.matches("http-equiv=").count();
        assert_eq!(addresses, namespaces + policy);
    }
    let page = sheet(&[]);
    assert!(page.contains("Content-Security-Policy") && page.contains("default-src 'none'"));
}
