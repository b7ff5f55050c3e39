//! Repositories that mean harm, or are broken.

use std::fs;
use std::path::Path;

use git2::ObjectType;
use git2::Repository;

use crate::books;
use crate::commands;

fn config(folder: &Path, text: &str) {
    let path = folder.join(".git/config");
    let own = fs::read_to_string(&path).expect("settings");
    fs::write(path, format!("{own}{text}")).expect("settings");
}

#[test]
fn settings_lead_elsewhere_and_hold_programs() {
    let folder = books::committed();
    let trap = folder.path().join("trap");
    config(
        folder.path(),
        &format!(
            "[core]\n\tfsmonitor = touch {0}\n\tsshCommand = touch {0}\n\teditor = touch {0}\n\
             \thooksPath = /nowhere\n\tpager = touch {0}\n\tattributesFile = /etc/passwd\n\
             [diff \"x\"]\n\tcommand = touch {0}\n\ttextconv = touch {0}\n\
             [filter \"x\"]\n\tclean = touch {0}\n\tsmudge = touch {0}\n\
             [merge \"x\"]\n\tdriver = touch {0}\n\
             [include]\n\tpath = ../../../../etc/passwd\n\
             [user]\n\tname = \"\\u001b[2J\"\n[alias]\n\tlint = !touch {0}\n",
            trap.display()
        )
        .replace("\\u001b", "\u{1b}"),
    );
    books::put(folder.path(), ".gitattributes", "* filter=x diff=x merge=x\n");
    commands::try_all(folder.path());
    assert!(!trap.exists(), "a program of the repository's settings was started");
}

#[test]
fn settings_can_not_be_read() {
    for text in [
        "[core\n",
        "[core]\n\tbare = perhaps\n",
        "[core]\n\trepositoryformatversion = 99\n",
        "[extensions]\n\tobjectFormat = odd\n",
        "\u{1b}[2J\n",
    ] {
        let folder = books::committed();
        config(folder.path(), text);
        commands::ask_the_past(folder.path());
    }
}

#[test]
fn objects_are_gone_or_broken() {
    let folder = books::committed();
    let objects = folder.path().join(".git/objects");
    let mut files: Vec<_> = walkdir::WalkDir::new(&objects)
        .sort_by_file_name()
        .into_iter()
        .map(|entry| entry.expect("an entry"))
        .filter(|entry| entry.file_type().is_file())
        .map(walkdir::DirEntry::into_path)
        .collect();
    files.sort();
    for (number, file) in files.iter().enumerate() {
        let whole = fs::read(file).expect("an object");
        let mut permissions = fs::metadata(file).expect("an object").permissions();
        #[expect(clippy::permissions_set_readonly_false, reason = "a folder of the test's own")]
        permissions.set_readonly(false);
        fs::set_permissions(file, permissions).expect("it may be written");
        match number % 3 {
            0 => fs::remove_file(file).expect("it goes"),
            1 => fs::write(file, &whole[..whole.len() / 2]).expect("half of it"),
            _ => fs::write(file, "no object").expect("something else"),
        }
        commands::ask_the_past(folder.path());
        fs::write(file, whole).expect("the object");
    }
    assert!(files.len() > 8, "{files:?}");
}

#[test]
fn references_lead_nowhere() {
    let heads = [
        "ref: refs/heads/nowhere\n",
        "ref: refs/heads/../../x\n",
        "0000\n",
        "",
        "\u{1b}[2J\n",
        "ref: HEAD\n",
        "ffffffffffffffffffffffffffffffffffffffff\n",
    ];
    for head in heads {
        let folder = books::committed();
        fs::write(folder.path().join(".git/HEAD"), head).expect("a head");
        commands::ask_the_past(folder.path());
    }
    let folder = books::committed();
    fs::write(folder.path().join(".git/packed-refs"), "garbage\n\u{1b}[2J\n").expect("references");
    fs::write(folder.path().join(".git/index"), "DIRC garbage").expect("an index");
    fs::write(folder.path().join(".git/MERGE_HEAD"), "garbage\n").expect("a head");
    commands::ask_the_past(folder.path());
}

#[test]
fn trees_hold_what_no_folder_can() {
    let folder = books::committed();
    let repository = Repository::open(folder.path()).expect("a repository");
    let odb = repository.odb().expect("objects");
    let blob = repository.blob(b"boat: kittiwake\n").expect("a text");
    let own = repository.head().expect("a head").peel_to_tree().expect("a tree").id();
    let entry = |mode: &str, name: &str, id: git2::Oid| {
        [mode.as_bytes(), b" ", name.as_bytes(), b"\0", id.as_bytes()].concat()
    };
    let odd: Vec<Vec<u8>> = [
        entry("100644", "..", blob),
        entry("100644", "../../x.yaml", blob),
        entry("40000", "boats", own),
        entry("100644", "boats", blob),
        entry("160000", "club.yaml", blob),
        entry("120000", "oars", blob),
        entry("100644", "\u{1b}[2J\n::error::x.yaml", blob),
        entry("40000", ".git", own),
        entry("777", "crews", blob),
    ]
    .into();
    for (number, part) in odd.iter().enumerate() {
        let mut tree = part.clone();
        tree.extend(entry("40000", "zz", own));
        // What git itself refuses to write is written as it is.
        let Ok(id) = odb.write(ObjectType::Tree, &tree) else { continue };
        let head = repository.head().expect("a head").peel_to_commit().expect("a commit").id();
        let text = format!(
            "tree {id}\nparent {head}\nauthor \u{1b}[2J <> 99999999999999999999 +9999\ncommitter x <y> -1 -9999\nencoding odd\n\n::error::{number}\n"
        );
        let commit = odb.write(ObjectType::Commit, text.as_bytes()).expect("a commit");
        fs::write(folder.path().join(".git/HEAD"), format!("{commit}\n")).expect("a head");
        commands::ask_the_past(folder.path());
        fs::write(folder.path().join(".git/HEAD"), format!("{head}\n")).expect("a head");
    }
}
