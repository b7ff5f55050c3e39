//! Commits, branches and what is about to be committed.

use std::fs;
use std::path::Path;

use git2::Repository;
use git2::Signature;
use git2::Time;
use serde_json::Value;

use super::pair::BOAT;
use super::pair::Pair;
use super::pair::Run;
use super::pair::run;

/// 2026-10-20, 00:30, two hours east of Greenwich, where it was still the day before.
const EARLY: (i64, i32) = (1_792_449_000, 120);

/// A book in a repository of its own.
struct Club {
    pair: Pair,
    git: Repository,
}

impl Club {
    fn new() -> Self {
        let pair = Pair::new();
        let git = Repository::init(pair.path("a")).expect("a repository");
        Self { pair, git }
    }

    fn gap(&self, from: &str, to: &str) {
        let text = self.pair.text("a", BOAT);
        assert!(text.contains(from));
        self.pair.write("a", BOAT, &text.replacen(from, to, 1));
    }

    fn stage(&self) {
        let mut index = self.git.index().expect("an index");
        index.add_all(["*"], git2::IndexAddOption::DEFAULT, None).expect("staged");
        index.write().expect("a written index");
    }

    fn commit(&self, what: &str) -> String {
        self.stage();
        let tree = self.git.index().expect("an index").write_tree().expect("a tree");
        let tree = self.git.find_tree(tree).expect("the tree");
        let when = Time::new(EARLY.0, EARLY.1);
        let who = Signature::new("Ines Marlow", "ines@example.invalid", &when).expect("a name");
        let head = self.git.head().ok().and_then(|head| head.peel_to_commit().ok());
        let parents: Vec<&git2::Commit> = head.iter().collect();
        let id = self.git.commit(Some("HEAD"), &who, &who, what, &tree, &parents);
        id.expect("a commit").to_string()
    }

    fn branch(&self, name: &str, at: &str) {
        let at = self.git.revparse_single(at).expect("a commit").peel_to_commit().expect("it");
        self.git.branch(name, &at, true).expect("a branch");
    }

    fn go_to(&self, name: &str) {
        let mut checkout = git2::build::CheckoutBuilder::new();
        checkout.force();
        self.git.set_head(&format!("refs/heads/{name}")).expect("a branch");
        self.git.checkout_head(Some(&mut checkout)).expect("checked out");
    }

    fn diff(&self, options: &[&str]) -> Run {
        run(&self.pair.path("a"), options)
    }

    /// Returns the old and the new figure of the one change.
    fn figures(&self, options: &[&str]) -> (f64, f64, Value) {
        let done = self.diff(&[options, &["--format", "json"]].concat());
        assert_eq!(done.code, Some(0), "{}", done.err);
        let json: Value = serde_json::from_str(&done.out).expect("JSON");
        let changes = json["changes"].as_array().expect("a list");
        assert_eq!(changes.len(), 1, "{changes:#?}");
        let figure = |side: &str| changes[0][side].as_f64().expect("a figure");
        (figure("old"), figure("new"), json.clone())
    }
}

fn pair_of(of: (f64, f64, Value)) -> (f64, f64) {
    (of.0, of.1)
}

#[test]
fn the_last_commit_is_compared_with_the_files_as_they_lie() {
    let club = Club::new();
    club.commit("a book");
    assert!(club.diff(&[]).out.contains("Nothing changed"));
    club.gap("gap: 60", "gap: 59");
    assert_eq!(pair_of(club.figures(&[])), (60.0, 59.0));
    assert_eq!(pair_of(club.figures(&["HEAD"])), (60.0, 59.0));
}

#[test]
fn commits_tags_and_branches_are_compared_with_two_words_or_two_dots() {
    let club = Club::new();
    let first = club.commit("a book");
    club.branch("spring", "HEAD");
    club.gap("gap: 60", "gap: 59");
    club.commit("narrower");
    for asked in [&[&first[..], "HEAD"][..], &["spring", "HEAD"], &["HEAD~1..HEAD"], &["spring.."]]
    {
        let (old, new, json) = club.figures(asked);
        assert_eq!((old, new), (60.0, 59.0), "{asked:?}");
        assert_eq!(json["as_of"], "2026-10-20", "the day where the commit was made");
    }
    assert_eq!(club.figures(&["HEAD~1", "HEAD", "--as-of", "2026-12-01"]).2["as_of"], "2026-12-01");
}

#[test]
fn three_dots_tell_what_one_branch_did_since_they_parted() {
    let club = Club::new();
    club.commit("a book");
    club.branch("spring", "HEAD");
    club.gap("gap: 60", "gap: 58");
    club.commit("on the first branch");
    club.go_to("spring");
    club.gap("seat-mark: 61", "seat-mark: 62");
    club.commit("on the other");
    club.branch("first", "HEAD");
    let first = if club.git.find_branch("master", git2::BranchType::Local).is_ok() {
        "master"
    } else {
        "main"
    };
    assert_eq!(pair_of(club.figures(&[&format!("{first}...spring")])), (61.0, 62.0));
    let done = club.diff(&[&format!("{first}..spring"), "--format", "json"]);
    let json: Value = serde_json::from_str(&done.out).expect("JSON");
    assert_eq!(json["changes"].as_array().map(Vec::len), Some(2));
}

#[test]
fn what_is_staged_is_compared_without_the_files_beside_it() {
    let club = Club::new();
    club.commit("a book");
    club.gap("gap: 60", "gap: 59");
    club.stage();
    club.gap("gap: 59", "gap: 50");
    assert_eq!(pair_of(club.figures(&["--staged"])), (60.0, 59.0));
    assert_eq!(pair_of(club.figures(&[])), (60.0, 50.0));
}

#[test]
fn before_the_first_commit_everything_is_new() {
    let club = Club::new();
    club.stage();
    let done = club.diff(&["--staged", "--format", "json"]);
    let json: Value = serde_json::from_str(&done.out).expect("JSON");
    let all = json["changes"].as_array().expect("a list");
    assert!(all.iter().all(|change| change["kind"] == "added"), "{all:#?}");
    assert_eq!(all.len(), 4, "the club, a boat, an oar set and a crew");
}

#[test]
fn a_folder_may_be_compared_with_a_commit() {
    let club = Club::new();
    club.commit("a book");
    club.pair.write("b", BOAT, &club.pair.text("b", BOAT).replacen("gap: 60", "gap: 57", 1));
    let other = club.pair.path("b");
    let other = other.to_str().expect("a path");
    assert_eq!(pair_of(club.figures(&["HEAD", other])), (60.0, 57.0));
    assert_eq!(pair_of(club.figures(&[other, "HEAD"])), (57.0, 60.0));
}

#[test]
fn what_names_nothing_is_wrong_usage_and_what_has_no_history_can_t_be_had() {
    let club = Club::new();
    club.commit("a book");
    assert_eq!(club.diff(&["sprnig"]).code, Some(2));
    assert_eq!(club.diff(&["HEAD..HEAD", "HEAD"]).code, Some(2));
    assert_eq!(club.diff(&["HEAD", "HEAD", "--staged"]).code, Some(2));
    let bare = tempfile::tempdir().expect("a folder");
    fs::write(bare.path().join("club.yaml"), "logbook: 1\n").expect("a file");
    let done = run(bare.path(), &[]);
    assert_eq!(done.code, Some(3), "{}", done.err);
    assert_eq!(run(Path::new("/"), &["HEAD"]).code, Some(3));
}
