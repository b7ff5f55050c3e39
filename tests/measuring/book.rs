//! A book in a repository of its own, on which the program is run.

use std::fs;
use std::path::Path;
use std::path::PathBuf;
use std::process::Command;
use std::process::Stdio;

use git2::Repository;
use tempfile::TempDir;

pub(crate) const BOAT: &str = "boats/kittiwake.yaml";
pub(crate) const RIGGED: &str = "2026-10-17";
pub(crate) const LATER: &str = "2026-10-31";

/// A book, and who commits in it.
pub(crate) struct Book {
    pub(crate) folder: TempDir,
}

/// What a run came to.
pub(crate) struct Run {
    code: Option<i32>,
    pub(crate) out: String,
    pub(crate) err: String,
}

impl Book {
    /// An empty repository of Ines Marlow.
    pub(crate) fn nothing() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let git = Repository::init(folder.path()).expect("a repository");
        let mut config = git.config().expect("settings");
        config.set_str("user.name", "Ines Marlow").expect("a name");
        config.set_str("user.email", "ines@club.example").expect("an address");
        Self { folder }
    }

    /// The sound book, committed.
    pub(crate) fn sound() -> Self {
        let book = Self::nothing();
        let from = Path::new("tests/data/sound-book");
        for path in ["club.yaml", BOAT, "oars/long-ash.yaml", "crews/masters-a.yaml"] {
            let text = fs::read_to_string(from.join(path)).expect("a text");
            book.write(path, &text);
        }
        book.commit();
        book
    }

    /// Commits all that lies in the folder.
    fn commit(&self) {
        let git = self.git();
        let mut index = git.index().expect("an index");
        index.add_all(["*"], git2::IndexAddOption::DEFAULT, None).expect("staged");
        index.write().expect("written");
        let tree = index.write_tree().expect("a tree");
        let tree = git.find_tree(tree).expect("the tree");
        let by = git.signature().expect("a name");
        git.commit(Some("HEAD"), &by, &by, "begun", &tree, &[]).expect("a commit");
    }

    pub(crate) fn git(&self) -> Repository {
        Repository::open(self.folder.path()).expect("a repository")
    }

    /// The message of the last commit.
    pub(crate) fn last_message(&self) -> String {
        let git = self.git();
        let commit = git.head().expect("a head").peel_to_commit().expect("a commit");
        commit.message().expect("UTF-8").to_owned()
    }

    pub(crate) fn commits(&self) -> usize {
        let git = self.git();
        let mut walk = git.revwalk().expect("a walk");
        if walk.push_head().is_err() {
            return 0;
        }
        walk.count()
    }

    pub(crate) fn path(&self, path: &str) -> PathBuf {
        self.folder.path().join(path)
    }

    pub(crate) fn text(&self, path: &str) -> String {
        fs::read_to_string(self.path(path)).expect("a text")
    }

    pub(crate) fn write(&self, path: &str, text: &str) {
        let path = self.path(path);
        fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        fs::write(path, text).expect("a written file");
    }

    /// Changes the first `from` of a file.
    pub(crate) fn edit(self, path: &str, from: &str, to: &str) -> Self {
        let text = self.text(path);
        assert!(text.contains(from), "{path} does not hold {from:?}");
        self.write(path, &text.replacen(from, to, 1));
        self
    }

    pub(crate) fn run(&self, words: &[&str]) -> Run {
        let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
        command.args(words).current_dir(self.folder.path()).stdin(Stdio::null());
        let output = command.output().expect("the program runs");
        Run {
            code: output.status.code(),
            out: String::from_utf8(output.stdout).expect("UTF-8"),
            err: String::from_utf8(output.stderr).expect("UTF-8"),
        }
    }

    /// Measures a record by the answers in a file that lies in no commit.
    pub(crate) fn measure(&self, id: &str, answers: &str, words: &[&str]) -> Run {
        let file = self.path(".git/answers.txt");
        fs::write(&file, answers).expect("a file");
        let file = file.to_string_lossy().into_owned();
        let own = ["measure", id, "--from", &file, "--no-input", "--as-of"];
        let day = if words.contains(&"--as-of") { &[][..] } else { &[LATER][..] };
        let own = if day.is_empty() { &own[..5] } else { &own[..] };
        self.run(&[own, day, words].concat())
    }
}

impl Run {
    #[track_caller]
    pub(crate) fn ends(self, code: i32) -> Self {
        assert_eq!(self.code, Some(code), "out: {}\nerr: {}", self.out, self.err);
        self
    }

    #[track_caller]
    pub(crate) fn tells(self, what: &str) -> Self {
        let told = format!("{}\n{}", self.out, self.err);
        let on_one_line = told.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(on_one_line.contains(what), "not told: {what}\n{told}");
        self
    }
}
