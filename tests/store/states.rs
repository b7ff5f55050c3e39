//! The states of a book that a repository holds: commits, what is about to be committed, merges.

use crate::book::Book;
use crate::book::assert_warned;
use crate::book::content;
use crate::book::paths;
use crate::book::refused;
use crate::commits::bare;
use crate::commits::commit;
use crate::commits::commit_all;
use crate::commits::error;
use crate::commits::id;
use crate::commits::opened;
use crate::commits::raw_tree;
use crate::commits::text;
use crate::commits::tree;
use git2::Oid;
use std::fs;
use tholebook::store;
use tholebook::store::BlobId;
use tholebook::store::Content;
use tholebook::store::Refusal;
use tholebook::store::RepositoryError;
use tholebook::store::StoreError;

#[test]
fn the_texts_of_a_commit_are_those_of_the_folder_then() {
    let book = Book::new("our book");
    let git = book.with_git();
    for path in ["boats/a.yaml", "boats/lent/b.yml", "boats/notes.txt", "schema/x.yaml"] {
        book.write(path, path);
    }
    for path in ["docs/c.yaml", "boats/.old/d.yaml", "waivers.yaml", "oars/E.YAML", ".x.yaml"] {
        book.write(path, path);
    }
    let first = commit_all(&git, "first");
    let then = book.open();
    book.write("boats/a.yaml", "changed");
    book.write("boats/new.yaml", "");
    let repository = opened(&git);
    let store = repository.at(id(&repository, first)).expect("its texts");
    assert_eq!(store, then, "same texts, root, name, left out and warnings");
    assert_eq!(store.files.len(), 5);
    assert_eq!(store.left_out, ["boats/.old/d.yaml", "boats/notes.txt", "docs/c.yaml"]);
    assert_eq!(text(&store, "boats/a.yaml"), "boats/a.yaml");
}

#[test]
fn texts_that_are_left_out_are_not_read_and_the_others_are() {
    let (_folder, git) = bare();
    let files =
        [("club.yaml", ""), ("boats/a.yaml", "a"), ("boats/b.yaml", "b"), ("oars/a.yaml", "a")];
    let first = commit(&git, None, tree(&git, &files), &[], "first");
    let gone = git.blob(b"a").expect("a blob").to_string();
    let repository = opened(&git);
    let at = id(&repository, first);
    let is_a = |blob: BlobId| blob.is_of("a");
    let some = repository.at_without(at, is_a).expect("texts");
    assert_eq!(paths(&some), ["boats/b.yaml", "club.yaml"]);
    assert_eq!(
        repository.at_without(at, |_| false).expect("texts"),
        repository.at(at).expect("texts")
    );
    fs::remove_file(git.path().join("objects").join(&gone[..2]).join(&gone[2..])).expect("removed");
    assert_eq!(opened(&git).at_without(at, is_a).expect("what is not read may be gone"), some);
    let told = error(opened(&git).at(at));
    assert!(told.to_string().contains("boats/a.yaml"), "{told}");
}

#[test]
fn a_book_in_a_subfolder_is_read_there_in_every_state() {
    let book = Book::new("club/book");
    let top = book.around().join("club");
    let git = git2::Repository::init(&top).expect("a repository");
    book.write("boats/a.yaml", "one");
    crate::book::write(&top.join("boats/not-ours.yaml"), b"");
    crate::book::write(&top.join("bookish/boats/nor-this.yaml"), b"");
    let first = commit_all(&git, "first");
    let repository = store::Repository::around(&book.root).expect("it opens");
    let at = repository.at(id(&repository, first)).expect("its texts");
    assert_eq!(at, book.open());
    assert_eq!(repository.staged().expect("the index"), at);
    assert_eq!((repository.below().as_deref(), repository.top()), (Some("book"), top.as_path()));
    let records = repository.records(id(&repository, first)).expect("records");
    assert_eq!(records.iter().map(|record| &*record.path).collect::<Vec<_>>(), paths(&at));
    let merged = repository.merged(id(&repository, first), id(&repository, first));
    assert_eq!(merged.expect("a merge with itself").store, at);
}

#[test]
fn a_book_whose_folder_is_gone_is_still_in_its_commits() {
    let book = Book::new("club/book");
    let git = git2::Repository::init(book.around().join("club")).expect("a repository");
    let first = commit_all(&git, "first");
    fs::remove_dir_all(&book.root).expect("it was there");
    let repository = store::Repository::around(&book.root).expect("it opens");
    assert_eq!(paths(&repository.at(id(&repository, first)).expect("texts")), ["club.yaml"]);
    let slip = store::Repository::around(&book.around().join("club/bok")).expect("it opens");
    let told = error(slip.at(id(&slip, first)));
    assert!(told.to_string().contains("no club.yaml in \"bok\""), "{told}");
    let nowhere = store::Repository::around(&book.around().join("no/such"));
    assert!(matches!(nowhere.err(), Some(StoreError::NoFolder { .. })));
}

#[test]
fn a_folder_without_a_repository_has_no_history() {
    let book = Book::new("b");
    let told = error(store::Repository::around(&book.root));
    assert!(matches!(told, RepositoryError::None { .. }), "{told}");
    assert!(told.help().contains(" init"), "{}", told.help());
}

#[test]
fn a_bare_repository_holds_its_book_at_the_top_or_the_only_one_below() {
    let (_folder, git) = bare();
    let book = [("boats/a.yaml", "top"), ("club.yaml", ""), ("example/club.yaml", "")];
    let top = commit(&git, None, tree(&git, &book), &[], "at the top");
    let below = [("x/y/boats/a.yaml", "below"), ("x/y/club.yaml", ""), (".x/club.yaml", "")];
    let below = commit(&git, None, tree(&git, &below), &[], "below");
    let none = commit(&git, None, tree(&git, &[("boats/a.yaml", "")]), &[], "none");
    let several = [("x/club.yaml", ""), ("y/club.yaml", "")];
    let several = commit(&git, None, tree(&git, &several), &[], "several");

    let repository = opened(&git);
    let store = repository.at(id(&repository, top)).expect("texts");
    assert_eq!((text(&store, "boats/a.yaml").as_str(), store.name.as_str()), ("top", "club"));
    let store = repository.at(id(&repository, below)).expect("it moved");
    assert_eq!((text(&store, "boats/a.yaml").as_str(), store.name.as_str()), ("below", "y"));
    assert!(matches!(error(repository.at(id(&repository, none))), RepositoryError::NoBook { .. }));
    let told = error(repository.at(id(&repository, several)));
    assert!(told.to_string().ends_with("several books: x, y"), "{told}");
    assert!(told.help().contains("club.git/x"), "{}", told.help());
    let said = store::Repository::around(&git.path().join("y")).expect("it opens");
    assert_eq!(paths(&said.at(id(&said, several)).expect("the one meant")), ["club.yaml"]);
    assert!(matches!(error(repository.staged()), RepositoryError::NothingStaged));
}

#[test]
fn a_bare_repository_among_tracked_files_is_not_followed() {
    let book = Book::new("b");
    let outer = book.with_git();
    let nested = book.root.join("boats/nested");
    let inner = git2::Repository::init_bare(&nested).expect("a repository");
    let bad = commit(&inner, None, tree(&inner, &[("club.yaml", "theirs")]), &[], "theirs");
    inner.reference("refs/heads/main", bad, true, "").expect("a branch");
    let own = store::Repository::around(&nested).expect("untracked, so nobody else's");
    assert_eq!(paths(&own.at(id(&own, bad)).expect("texts")), ["club.yaml"]);
    crate::book::track(&outer, "boats/nested/HEAD");
    for folder in [nested.clone(), nested.join("objects")] {
        let told = error(store::Repository::around(&folder));
        assert!(matches!(told, RepositoryError::Nested { .. }), "{told}");
    }
    assert!(store::Repository::around(&book.root.join("boats")).is_ok(), "the outer one");
}

#[test]
fn a_working_tree_that_lies_elsewhere_is_not_followed() {
    let book = Book::new("b");
    let git = book.with_git();
    let elsewhere = book.around().join("elsewhere");
    fs::create_dir(&elsewhere).expect("a folder");
    let mut config = git.config().expect("settings");
    config.set_str("core.worktree", elsewhere.to_str().expect("plain")).expect("it can be set");
    let told = error(store::Repository::around(&book.root));
    assert!(matches!(told, RepositoryError::Elsewhere { .. }), "{told}");
    assert!(told.help().contains("config --unset core.worktree"), "{}", told.help());
}

#[test]
fn a_linked_worktree_has_its_own_head_and_index() {
    let book = Book::new("b");
    let git = book.with_git();
    let first = commit_all(&git, "first");
    let linked = book.around().join("linked");
    git.worktree("linked", &linked, None).expect("a worktree");
    book.write("boats/main.yaml", "");
    let second = commit_all(&git, "second");
    let there = store::Repository::around(&linked).expect("it opens");
    assert_eq!(there.head().expect("a head"), Some(id(&there, first)));
    assert_eq!(paths(&there.staged().expect("its index")), ["club.yaml"]);
    let other = there.at(id(&there, second)).expect("the commits are shared");
    assert_eq!((paths(&other).len(), other.root.as_path()), (2, linked.as_path()));
}

#[test]
fn links_and_submodules_are_told_and_never_followed() {
    let (_folder, git) = bare();
    let blob = |text: &str| git.blob(text.as_bytes()).expect("a blob");
    let boats = raw_tree(
        &git,
        &[
            ("120000", b"a.yaml", blob("../../../etc/passwd")),
            ("120000", b"folder", blob("../oars")),
            ("160000", b"lent", Oid::from_bytes(&[7; 20]).expect("twenty")),
            ("120000", b"out", blob("/etc")),
            ("120000", b"readme", blob("../README")),
        ],
    );
    let top = [
        ("100644", &b"README"[..], blob("")),
        ("40000", b"boats", boats),
        ("100644", b"club.yaml", blob("")),
        ("120000", b"crews", blob("boats")),
    ];
    let commit = commit(&git, None, raw_tree(&git, &top), &[], "odd");
    let repository = opened(&git);
    let store = repository.at(id(&repository, commit)).expect("texts");
    assert_eq!(
        paths(&store),
        ["boats/a.yaml", "boats/folder", "boats/out", "club.yaml", "crews"],
        "a link to a plain file that is no record is nobody's business"
    );
    for path in ["boats/a.yaml", "boats/folder", "boats/out", "crews"] {
        assert_eq!(*refused(&store, path), Refusal::Link, "{path}");
    }
    assert_warned(&store, &["\"boats/lent\" is a submodule"]);
    let records = repository.records(id(&repository, commit)).expect("records");
    let link = records.iter().find(|record| record.path == "boats/a.yaml".into());
    let link = link.expect("a record's name");
    assert_eq!(repository.content(link).expect("told"), Content::Refused(Refusal::Link));
}

#[test]
fn hostile_names_and_texts_come_as_they_are_and_none_leads_out() {
    let (_folder, git) = bare();
    let blob = |bytes: &[u8]| git.blob(bytes).expect("a blob");
    let large = vec![b' '; (1 << 20) + 1];
    let boats = raw_tree(
        &git,
        &[
            ("100644", b"\x1b[31m.yaml", blob(b"")),
            ("100644", b"-rf.yaml", blob(b"")),
            ("100644", b"::error::.yaml", blob(b"")),
            ("100644", b"a\nb.yaml", blob(b"")),
            ("100644", b"bad.yaml", blob(b"a: \xff")),
            ("100644", b"large.yaml", blob(&large)),
            ("100644", b"\xe9.yaml", blob(b"")),
        ],
    );
    let club = blob(b"");
    let top = raw_tree(&git, &[("40000", b"boats", boats), ("100644", b"club.yaml", club)]);
    let odd = commit(&git, None, top, &[], "odd");
    let repository = opened(&git);
    let store = repository.at(id(&repository, odd)).expect("texts");
    let names = ["\u{1b}[31m", "-rf", "::error::", r"\xe9", "a\nb", "bad", "large"];
    for name in names {
        content(&store, &format!("boats/{name}.yaml"));
    }
    assert_eq!(store.files.len(), 8);
    assert!(matches!(refused(&store, "boats/bad.yaml"), Refusal::NotUtf8 { at: 3, .. }));
    let bytes = large.len() as u64;
    assert_eq!(*refused(&store, "boats/large.yaml"), Refusal::TooLarge { bytes });

    for name in [&b".."[..], b"x/../../y.yaml", b"."] {
        let boats = raw_tree(&git, &[("100644", name, club)]);
        let top = raw_tree(&git, &[("40000", b"boats", boats), ("100644", b"club.yaml", club)]);
        let out = commit_of(&git, top);
        let told = repository.at(id(&repository, out)).expect_err("it leads out").to_string();
        assert!(told.contains("no folder can hold such a name"), "{told}");
        let records = repository.records(id(&repository, out)).expect("records");
        assert_eq!(records.len(), 1, "{records:?}");
    }
}

/// Makes a commit of a tree that libgit2 need not like.
fn commit_of(git: &git2::Repository, tree: Oid) -> Oid {
    let text = format!("tree {tree}\nauthor a <b> 1 +0000\ncommitter a <b> 1 +0000\n\nodd\n");
    crate::commits::raw(git, git2::ObjectType::Commit, text.as_bytes())
}

/// Each folder holds the next one ten times over: ten thousand million files in ten small trees.
#[test]
fn a_tree_that_unfolds_without_end_is_refused() {
    let (_folder, git) = bare();
    let blob = git.blob(b"").expect("a blob");
    let mut folder = raw_tree(&git, &[("100644", b"a.yaml", blob)]);
    for _ in 0..10 {
        let names: Vec<String> = (0..10).map(|number| format!("f{number}")).collect();
        let entries: Vec<_> = names.iter().map(|name| ("40000", name.as_bytes(), folder)).collect();
        folder = raw_tree(&git, &entries);
    }
    let top = raw_tree(&git, &[("40000", b"boats", folder), ("100644", b"club.yaml", blob)]);
    let bomb = commit_of(&git, top);
    let repository = opened(&git);
    let at = id(&repository, bomb);
    assert!(matches!(error(repository.at(at)), RepositoryError::TooMuch { .. }));
    assert!(matches!(error(repository.records(at)), RepositoryError::TooMuch { .. }));
}
