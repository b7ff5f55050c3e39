//! Two copies of the sound book, one of them changed, and the program run over both.

use std::fs;
use std::path::Path;
use std::path::PathBuf;
use std::process::Command;

use serde_json::Value;
use tempfile::TempDir;

pub(crate) const BOAT: &str = "boats/kittiwake.yaml";
pub(crate) const OARS: &str = "oars/long-ash.yaml";
pub(crate) const CREW: &str = "crews/masters-a.yaml";

/// Two books that are equal until one is edited.
pub(crate) struct Pair {
    folder: TempDir,
}

/// What a run came to.
pub(crate) struct Run {
    pub(crate) code: Option<i32>,
    pub(crate) out: String,
    pub(crate) err: String,
}

impl Pair {
    pub(crate) fn new() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let pair = Self { folder };
        for side in ["a", "b"] {
            for path in ["club.yaml", BOAT, OARS, CREW] {
                let text = fs::read_to_string(Path::new("tests/data/sound-book").join(path));
                pair.write(side, path, &text.expect("a text"));
            }
        }
        pair
    }

    pub(crate) fn path(&self, side: &str) -> PathBuf {
        self.folder.path().join(side)
    }

    pub(crate) fn text(&self, side: &str, path: &str) -> String {
        fs::read_to_string(self.path(side).join(path)).expect("a text")
    }

    pub(crate) fn write(&self, side: &str, path: &str, text: &str) {
        let to = self.path(side).join(path);
        fs::create_dir_all(to.parent().expect("a folder")).expect("a new folder");
        fs::write(to, text).expect("a written file");
    }

    /// Changes the first `from` of a file of one side.
    pub(crate) fn edit(self, side: &str, path: &str, from: &str, to: &str) -> Self {
        let text = self.text(side, path);
        assert!(text.contains(from), "{path} does not hold {from:?}");
        self.write(side, path, &text.replacen(from, to, 1));
        self
    }

    /// Adds lines to the end of a file of one side.
    pub(crate) fn add(self, side: &str, path: &str, lines: &str) -> Self {
        let text = self.text(side, path);
        self.write(side, path, &format!("{}\n{lines}", text.trim_end()));
        self
    }

    pub(crate) fn run(&self, options: &[&str]) -> Run {
        let mut all = vec!["a", "b", "--as-of", "2026-11-25"];
        all.extend(options);
        run(self.folder.path(), &all)
    }

    pub(crate) fn json(&self) -> Value {
        let run = self.run(&["--format", "json"]);
        assert_eq!(run.code, Some(0), "{}", run.err);
        serde_json::from_str(&run.out).expect("JSON")
    }

    /// Every change as `kind name`, sorted.
    pub(crate) fn changes(&self) -> Vec<String> {
        let mut all: Vec<String> = each(&self.json()["changes"], |change| {
            format!("{} {}", word(&change["kind"]), word(&change["name"]))
        });
        all.sort();
        all
    }

    /// The one change of a name.
    pub(crate) fn change(&self, name: &str) -> Value {
        let json = self.json();
        let all = json["changes"].as_array().expect("a list");
        let of_name: Vec<&Value> = all.iter().filter(|own| own["name"] == name).collect();
        assert_eq!(of_name.len(), 1, "{json:#}");
        of_name[0].clone()
    }
}

pub(crate) fn run(folder: &Path, options: &[&str]) -> Run {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    for name in ["GIT_DIR", "GIT_INDEX_FILE", "GIT_WORK_TREE", "COLUMNS", "CLICOLOR_FORCE"] {
        command.env_remove(name);
    }
    let done = command.arg("diff").args(options).current_dir(folder).output().expect("a run");
    let text = |bytes| String::from_utf8(bytes).expect("UTF-8");
    Run { code: done.status.code(), out: text(done.stdout), err: text(done.stderr) }
}

pub(crate) fn each<T>(list: &Value, read: impl Fn(&Value) -> T) -> Vec<T> {
    list.as_array().expect("a list").iter().map(read).collect()
}

pub(crate) fn word(value: &Value) -> &str {
    value.as_str().expect("a text")
}
