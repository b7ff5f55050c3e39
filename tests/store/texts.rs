//! Which texts a folder gives, and what is no text.

use std::fs;
use std::path::Path;

use tholebook::store;
use tholebook::store::Content;
use tholebook::store::MAX_FILE_BYTES;
use tholebook::store::Refusal;

use crate::book::Book;
use crate::book::assert_warned;
use crate::book::content;
use crate::book::paths;
use crate::book::refused;

const MAX: usize = MAX_FILE_BYTES as usize;

#[test]
fn the_texts_are_the_two_at_the_root_and_the_records_below_four_folders() {
    let book = Book::new("tarrow-head");
    for path in [
        "waivers.yaml",
        "boats/kittiwake.yaml",
        "boats/old/1998/Gannet.YML",
        "oars/long-ash.Yaml",
        "crews/A.yml",
        "classes/surfboat.yaml",
        "boats/.hidden.yaml",
        "boats/notes.txt",
        "boats/kittiwake.yaml.bak",
        "boats/.trash/fulmar.yaml",
    ] {
        book.write(path, path);
    }
    let store = book.open();
    assert_eq!(
        paths(&store),
        [
            "boats/.hidden.yaml",
            "boats/kittiwake.yaml",
            "boats/old/1998/Gannet.YML",
            "classes/surfboat.yaml",
            "club.yaml",
            "crews/A.yml",
            "oars/long-ash.Yaml",
            "waivers.yaml",
        ]
    );
    let text = Content::Text("oars/long-ash.Yaml".into());
    assert_eq!(content(&store, "oars/long-ash.Yaml"), &text, "its own text under each name");
    let left_out = ["boats/.trash/fulmar.yaml", "boats/kittiwake.yaml.bak", "boats/notes.txt"];
    assert_eq!(store.left_out, left_out);
    let strays: Vec<&str> = store.strays.iter().map(|named| named.path.as_str()).collect();
    assert_eq!(strays, left_out);
    assert!(store.warnings.is_empty(), "{store:#?}");
}

#[test]
fn yaml_elsewhere_is_named_as_left_out_but_not_in_dot_folders_schema_or_target() {
    let book = Book::new("b");
    for path in [
        "kittiwake.yaml",
        "club.yml",
        "boat/gannet.yml",
        "Boats/skua.yaml",
        "docs/club.yaml",
        "docs-old.yaml",
        "docs/schema/a.yaml",
        "docs/.draft/a.yaml",
        "schema/boat.yaml",
        "target/a.yaml",
        ".github/workflows/lint.yml",
    ] {
        book.write(path, "");
    }
    let left_out = [
        "Boats/skua.yaml",
        "boat/gannet.yml",
        "club.yml",
        "docs-old.yaml",
        "docs/club.yaml",
        "docs/schema/a.yaml",
        "kittiwake.yaml",
    ];
    let store = book.open();
    assert_eq!(store.left_out, left_out);
    assert_eq!(paths(&store), ["club.yaml"]);
}

#[test]
fn texts_are_sorted_by_path_however_many_are_read_side_by_side() {
    let book = Book::new("b");
    for number in 0..200 {
        book.write(format!("boats/{number}.yaml"), number.to_string());
        book.write(format!("boats/{number}/oar.yaml"), "");
    }
    let store = book.open();
    assert_eq!(store.files.len(), 401);
    assert!(store.files.is_sorted_by(|a, b| a.path < b.path));
    assert_eq!(content(&store, "boats/137.yaml"), &Content::Text("137".into()));
}

#[test]
fn an_empty_file_and_a_byte_order_mark_are_text() {
    let book = Book::new("b");
    book.write("boats/empty.yaml", "");
    book.write("boats/marked.yaml", "\u{feff}boat: skua\r\n");
    let store = book.open();
    assert_eq!(content(&store, "boats/empty.yaml"), &Content::Text(String::new()));
    let marked = Content::Text("\u{feff}boat: skua\r\n".into());
    assert_eq!(content(&store, "boats/marked.yaml"), &marked);
}

#[test]
fn bytes_that_are_no_utf_8_are_refused_at_the_first_bad_byte() {
    let book = Book::new("b");
    book.write("boats/latin.yaml", b"na\xc3\xafm: \xe9t\xe9\n");
    book.write("boats/cut.yaml", b"boat: \xe2\x82");
    let store = book.open();
    let lossy = "naïm: \u{fffd}t\u{fffd}\n".to_owned();
    assert_eq!(refused(&store, "boats/latin.yaml"), &Refusal::NotUtf8 { at: 7, lossy });
    let lossy = "boat: \u{fffd}".to_owned();
    assert_eq!(refused(&store, "boats/cut.yaml"), &Refusal::NotUtf8 { at: 6, lossy });
}

#[test]
fn a_file_over_a_mebibyte_is_refused_and_one_of_just_that_is_read() {
    assert_eq!(MAX, 1024 * 1024);
    let book = Book::new("b");
    book.write("boats/full.yaml", vec![b'#'; MAX]);
    book.write("boats/over.yaml", vec![b'#'; MAX + 1]);
    let store = book.open();
    assert!(matches!(content(&store, "boats/full.yaml"), Content::Text(text) if text.len() == MAX));
    let over = Refusal::TooLarge { bytes: MAX_FILE_BYTES + 1 };
    assert_eq!(refused(&store, "boats/over.yaml"), &over);
}

#[test]
fn a_huge_file_is_refused_unread() {
    let book = Book::new("b");
    book.write("boats/huge.yaml", "");
    // A terabyte of nothing takes no room on the disk, and would not fit in memory.
    let bytes = 1 << 40;
    let file = fs::OpenOptions::new().write(true).open(book.root.join("boats/huge.yaml"));
    if file.expect("it was just written").set_len(bytes).is_err() {
        return; // A file system that can't hold such a file can't show this either.
    }
    assert_eq!(refused(&book.open(), "boats/huge.yaml"), &Refusal::TooLarge { bytes });
}

#[test]
fn a_folder_named_like_a_record_is_looked_into_and_told() {
    let book = Book::new("b");
    book.write("boats/kittiwake.yaml/inside.yaml", "boat: kittiwake\n");
    let store = book.open();
    assert_eq!(paths(&store), ["boats/kittiwake.yaml/inside.yaml", "club.yaml"]);
    assert_warned(&store, &["\"boats/kittiwake.yaml\" is a folder"]);
}

#[test]
fn a_file_where_a_folder_of_records_would_be_is_told() {
    let book = Book::new("b");
    book.write("boats", "boat: kittiwake\n");
    let store = book.open();
    assert_eq!(paths(&store), ["club.yaml"]);
    assert_warned(&store, &["\"boats\" is a file"]);
}

#[test]
fn names_with_blanks_line_ends_and_control_characters_stay_as_they_are() {
    let names =
        ["boats/my boat.yaml", "boats/two\nlines.yaml", "boats/\u{1b}[31m.yaml", "boats/-x.yml"];
    let book = Book::new("b");
    for name in names {
        book.write(name, name);
    }
    let store = book.open();
    for name in names {
        assert_eq!(content(&store, name), &Content::Text(name.into()));
        assert_eq!(store.file(name), book.root.join(name));
    }
}

#[cfg(unix)]
#[test]
fn names_that_are_no_utf_8_are_told_apart_and_found_again() {
    use std::ffi::OsStr;
    use std::os::unix::ffi::OsStrExt;

    let book = Book::new("b");
    let names: [&[u8]; 4] = [b"\xe9.yaml", b"\xe8.yaml", b"\\xe9.yaml", b"e.yaml"];
    for name in names {
        book.write(Path::new("boats").join(OsStr::from_bytes(name)), name);
    }
    let store = book.open();
    let shown =
        [r"boats/\\xe9.yaml", r"boats/\xe8.yaml", r"boats/\xe9.yaml", "boats/e.yaml", "club.yaml"];
    assert_eq!(paths(&store), shown);
    for (path, name) in shown.iter().zip([names[2], names[1], names[0], names[3]]) {
        assert_eq!(fs::read(store.file(path)).expect("it is found again"), name, "{path}");
    }
}

#[cfg(unix)]
#[test]
fn a_link_in_a_records_place_is_refused_and_never_followed() {
    use std::os::unix::fs::symlink;

    let book = Book::new("b");
    fs::write(book.around().join("outside.yaml"), "boat: secret\n").expect("a file");
    fs::create_dir(book.around().join("shed")).expect("a folder");
    fs::write(book.around().join("shed/skua.yaml"), "boat: skua\n").expect("a file");
    book.write("boats/kittiwake.yaml", "boat: kittiwake\n");
    for (target, link) in [
        ("../../outside.yaml", "boats/a.yaml"),
        ("kittiwake.yaml", "boats/b.YML"),
        ("../../nowhere", "boats/c.yaml"),
        ("../../nowhere", "boats/may-be-a-folder"),
        ("../../shed", "boats/shed"),
        ("..", "boats/round"),
        ("../../outside.yaml", "boats/notes.txt"),
        ("../../shed", "boats/.shed"),
        ("../shed", "oars"),
        ("../shed", "docs"),
        ("../outside.yaml", "waivers.yaml"),
        ("../outside.yaml", "aside.yaml"),
    ] {
        symlink(target, book.root.join(link)).expect("a link");
    }
    let store = book.open();
    let refusals = [
        "boats/a.yaml",
        "boats/b.YML",
        "boats/c.yaml",
        "boats/may-be-a-folder",
        "boats/round",
        "boats/shed",
        "oars",
        "waivers.yaml",
    ];
    for path in refusals {
        assert_eq!(refused(&store, path), &Refusal::Link, "{path}");
    }
    assert_eq!(paths(&store).len(), refusals.len() + 2, "{:?}", paths(&store));
    assert_eq!(store.left_out, ["aside.yaml", "boats/.shed", "boats/notes.txt"]);
}

#[cfg(unix)]
#[test]
fn a_link_named_club_yaml_makes_a_book_whose_club_is_refused() {
    let book = Book::new("b");
    fs::rename(book.root.join("club.yaml"), book.around().join("club.yaml")).expect("a move");
    std::os::unix::fs::symlink("../club.yaml", book.root.join("club.yaml")).expect("a link");
    assert_eq!(refused(&book.open(), "club.yaml"), &Refusal::Link);
    assert_eq!(store::find_book(&book.root).expect("a book"), book.root);
}
