//! Names of commits, the people in them, and how they follow from one another.

use std::collections::HashSet;
use std::sync::Arc;

use git2::ObjectType;
use git2::Oid;
use tholebook::store::Content;
use tholebook::store::Repository;
use tholebook::store::RepositoryError;
use tholebook::store::StoreError;

use crate::commits::bare;
use crate::commits::commit;
use crate::commits::id;
use crate::commits::opened;
use crate::commits::raw;
use crate::commits::tree;

fn unnamed(repository: &Repository, rev: &str) -> RepositoryError {
    match repository.commit(rev) {
        Err(StoreError::Repository(error)) => error,
        other => panic!("{rev:?} gave {other:?}"),
    }
}

/// A line of commits, each with another text of one boat.
fn line(git: &git2::Repository, length: usize) -> Vec<Oid> {
    let mut made: Vec<Oid> = Vec::new();
    for number in 0..length {
        let text = format!("pin: {number}\n");
        let tree = tree(git, &[("boats/a.yaml", &text), ("club.yaml", ""), ("oars/x.yaml", "")]);
        let parents: Vec<Oid> = made.last().copied().into_iter().collect();
        made.push(commit(git, Some("refs/heads/main"), tree, &parents, "next"));
    }
    made
}

#[test]
fn a_commit_is_had_by_branch_tag_id_and_steps_back() {
    let (_folder, git) = bare();
    let made = line(&git, 3);
    let target = git.find_object(made[1], None).expect("a commit");
    let by = git2::Signature::new("Ines", "i@example.org", &git2::Time::new(0, 0)).expect("plain");
    git.tag("spring", &target, &by, "the spring regatta", false).expect("a tag");
    let repository = opened(&git);
    let middle = id(&repository, made[1]);
    for rev in ["spring", "HEAD~1", "main^", "refs/tags/spring", &middle.to_string()[..12]] {
        assert_eq!(repository.commit(rev).expect(rev), middle, "{rev}");
    }
    assert_eq!(repository.head().expect("a head"), Some(id(&repository, made[2])));
    assert_eq!(middle.short(), middle.to_string()[..8]);
}

#[test]
fn a_name_that_can_be_no_commit_is_not_even_looked_up() {
    let (_folder, git) = bare();
    line(&git, 2);
    let repository = opened(&git);
    let long = "a".repeat(257);
    for rev in [
        "",
        " ",
        &long,
        "-x",
        "--upload-pack=x",
        "main..main",
        "main...main",
        "^main",
        ":/next",
        "main:club.yaml",
        "main^{/next}",
        "main\u{1b}[31m",
        "main\n",
        "main\0",
    ] {
        let told = unnamed(&repository, rev);
        assert!(matches!(told, RepositoryError::NoRevision { .. }), "{rev:?}: {told}");
        assert!(told.to_string().len() < 200, "{told}");
    }
}

#[test]
fn a_name_that_nothing_has_is_told_with_the_nearest_one() {
    let (_folder, git) = bare();
    let made = line(&git, 1);
    git.reference("refs/remotes/origin/season", made[0], true, "").expect("a branch");
    git.reference("refs/tags/autumn-2026", made[0], true, "").expect("a tag");
    let repository = opened(&git);
    let cases = [("mian", "main"), ("season", "origin/season"), ("autum-2026", "autumn-2026")];
    for (rev, nearest) in cases {
        let help = unnamed(&repository, rev).help();
        assert!(help.contains(&format!("Did you mean {nearest}?")), "{rev}: {help}");
    }
    let told = unnamed(&repository, "zzzzzz");
    assert!(matches!(told, RepositoryError::UnknownRevision { nearest: None, .. }), "{told}");
    assert!(told.help().contains("git branch --all"), "{}", told.help());
    for rev in ["HEAD~7", "0000000000000000000000000000000000000000", "main@{", "main~~~~~~x"] {
        let told = unnamed(&repository, rev);
        assert!(matches!(told, RepositoryError::UnknownRevision { .. }), "{rev}: {told}");
    }
}

#[test]
fn a_folder_or_a_file_is_no_commit() {
    let (_folder, git) = bare();
    let tree = tree(&git, &[("club.yaml", "")]);
    let repository = opened(&git);
    let told = unnamed(&repository, &tree.to_string());
    assert!(matches!(told, RepositoryError::NotACommit { .. }), "{told}");
}

#[test]
fn before_the_first_commit_there_is_no_head() {
    let (_folder, git) = bare();
    assert_eq!(opened(&git).head().expect("an answer"), None);
}

#[test]
fn the_people_of_a_commit_come_with_their_time_and_the_subject_on_one_line() {
    let (_folder, git) = bare();
    let made = commit(&git, None, tree(&git, &[]), &[], "Pin lowered\nat seat 2\n\nlong story\n");
    let repository = opened(&git);
    let details = repository.details(id(&repository, made)).expect("details");
    assert_eq!(details.subject, "Pin lowered at seat 2");
    assert_eq!(
        (details.author.name.as_str(), details.author.email.as_str()),
        ("Ines Marlow", "ines@example.org")
    );
    let when = details.committer.when.expect("a time");
    assert_eq!((when.seconds, when.offset_minutes), (1_767_225_600, 60));
    assert!(details.parents.is_empty() && !details.at_the_edge);
}

#[test]
fn a_commit_with_a_broken_author_is_still_a_commit() {
    let (_folder, git) = bare();
    let tree = tree(&git, &[("club.yaml", "")]);
    let cases: [(&[u8], &str); 4] = [
        (b"Ren\xe9 <r@x> 1 +0000", "Ren\u{fffd}"),
        (b"no brackets at all", "no brackets at all"),
        (b"\x1b]0;evil\x07 <x> 1 +0000", "\u{1b}]0;evil\u{7}"),
        (b"", ""),
    ];
    let repository = opened(&git);
    for (author, name) in cases {
        let mut bytes = format!("tree {tree}\nauthor ").into_bytes();
        bytes.extend_from_slice(author);
        bytes.extend_from_slice(b"\ncommitter ");
        bytes.extend_from_slice(author);
        bytes.extend_from_slice(b"\n\nodd\n");
        let odd = raw(&git, ObjectType::Commit, &bytes);
        git.reference("refs/heads/odd", odd, true, "").expect("a branch");
        let odd = repository.commit("odd").expect("a commit all the same");
        assert_eq!(repository.walk(odd).expect("a walk"), [odd]);
        assert_eq!(repository.commit(&odd.to_string()).expect("by its id"), odd);
        let details = repository.details(odd).expect("details");
        assert_eq!((details.author.name.as_str(), details.subject.as_str()), (name, "odd"));
        assert_eq!(repository.at(odd).expect("texts").files.len(), 1);
        assert_eq!(repository.records(odd).expect("records").len(), 1);
    }
}

#[test]
fn a_walk_meets_every_commit_once_and_none_before_all_its_children() {
    let (_folder, git) = bare();
    let tree = tree(&git, &[("club.yaml", "")]);
    let make = |parents: &[Oid], message: &str| commit(&git, None, tree, parents, message);
    let root = make(&[], "root");
    let (left, right) = (make(&[root], "left"), make(&[root], "right"));
    let (cross, other) = (make(&[left, right], "cross"), make(&[right, left], "other"));
    let tip = make(&[cross, other, root], "tip");
    make(&[tip], "not reached");
    let repository = opened(&git);
    let walked = repository.walk(id(&repository, tip)).expect("a walk");
    assert_eq!(walked.len(), 6);
    let mut seen = HashSet::new();
    for commit in walked.iter().rev() {
        let parents = repository.parents(*commit).expect("parents");
        assert!(parents.iter().all(|parent| seen.contains(parent)), "{commit}");
        assert!(seen.insert(*commit));
    }
    let base = repository.merge_base(id(&repository, cross), id(&repository, root));
    assert_eq!(base.expect("a base"), Some(id(&repository, root)));
}

#[test]
fn the_records_of_a_commit_are_named_unread_and_shared_by_those_that_have_the_same() {
    let (_folder, git) = bare();
    let made = line(&git, 3);
    let repository = opened(&git);
    let ids: Vec<_> = made.iter().map(|made| id(&repository, *made)).collect();
    let records: Vec<_> = ids.iter().map(|id| repository.records(*id).expect("records")).collect();
    for (number, records) in records.iter().enumerate() {
        let paths: Vec<&str> = records.iter().map(|record| &*record.path).collect();
        assert_eq!(paths, ["boats/a.yaml", "club.yaml", "oars/x.yaml"]);
        let text = format!("pin: {number}\n");
        assert_eq!(repository.text(records[0].blob).expect("a text"), Content::Text(text));
    }
    assert_eq!(records[0][1], records[1][1]);
    assert_ne!(records[0][0].blob, records[1][0].blob);
    assert!(Arc::ptr_eq(&records[1], &repository.records(ids[1]).expect("records")));
}

#[test]
fn a_commit_from_before_the_book_has_no_records() {
    let (_folder, git) = bare();
    let first = commit(&git, None, tree(&git, &[("README", "")]), &[], "no book yet");
    let book = tree(&git, &[("club.yaml", "")]);
    let second = commit(&git, Some("refs/heads/main"), book, &[first], "the book");
    let repository = opened(&git);
    assert_eq!(repository.records(id(&repository, first)).expect("none").len(), 0);
    assert_eq!(repository.records(id(&repository, second)).expect("one").len(), 1);
}

#[test]
fn what_the_repository_has_lost_is_named_with_the_command_that_tells_more() {
    let (_folder, git) = bare();
    let made = line(&git, 2);
    let boat = git.blob(b"pin: 0\n").expect("the same blob").to_string();
    let object = |id: &str| git.path().join("objects").join(&id[..2]).join(&id[2..]);
    std::fs::remove_file(object(&boat)).expect("it was there");
    let repository = opened(&git);
    let first = id(&repository, made[0]);
    let told = repository.at(first).expect_err("it is lost");
    assert!(told.to_string().contains("does not hold boats/a.yaml"), "{told}");
    assert!(told.help().contains("fsck"), "{}", told.help());
    assert_eq!(repository.records(first).expect("the names are there").len(), 3);
    let tip = id(&repository, made[1]);
    let stranger = commit(&git, None, tree(&git, &[]), &[], "no relation");
    let stranger = id(&repository, stranger);
    assert_eq!(repository.merge_base(tip, stranger).expect("an answer"), None);
    std::fs::remove_file(object(&made[0].to_string())).expect("it was there");
    let told = opened(&git).walk(tip).expect_err("it is lost");
    assert!(told.to_string().contains(&made[0].to_string()), "{told}");
    let told = opened(&git).merge_base(tip, stranger).expect_err("it can't be known");
    assert!(told.to_string().contains("does not hold a commit before"), "{told}");
}

#[test]
fn a_history_that_is_cut_short_ends_at_its_edge_in_a_linked_worktree_too() {
    let book = crate::book::Book::new("b");
    let git = book.with_git();
    let first = crate::commits::commit_all(&git, "first");
    book.write("boats/a.yaml", "");
    let second = crate::commits::commit_all(&git, "second");
    let linked = book.around().join("linked");
    git.worktree("linked", &linked, None).expect("a worktree");
    std::fs::write(git.path().join("shallow"), format!("{second}\n")).expect("a file");
    let hex = first.to_string();
    let object = git.path().join("objects").join(&hex[..2]).join(&hex[2..]);
    std::fs::remove_file(object).expect("it was there");
    for folder in [&book.root, &linked] {
        let repository = Repository::around(folder).expect("it opens");
        assert!(repository.is_shallow());
        let tip = repository.commit("HEAD").expect("a head");
        assert_eq!(repository.walk(tip).expect("a walk"), [tip]);
        let details = repository.details(tip).expect("details");
        assert!(details.at_the_edge && details.parents.is_empty());
        assert_eq!(repository.at(tip).expect("texts").files.len(), 2);
        let help = unnamed(&repository, "HEAD~1").help();
        assert!(help.contains("fetch --unshallow"), "{help}");
    }
}
