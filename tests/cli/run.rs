//! The program run on a book in a folder of its own.

use std::fs;
use std::path::Path;
use std::process::Command;
use std::process::Stdio;
use tempfile::TempDir;

pub(crate) const BOAT: &str = "boats/kittiwake.yaml";

/// A copy of the sound book in a folder of its own.
pub(crate) struct Club {
    pub(crate) folder: TempDir,
}

/// What a run came to.
pub(crate) struct Run {
    pub(crate) code: Option<i32>,
    pub(crate) out: String,
    pub(crate) err: String,
}

impl Club {
    pub(crate) fn new() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let from = Path::new("tests/data/sound-book");
        for path in ["club.yaml", BOAT, "oars/long-ash.yaml", "crews/masters-a.yaml"] {
            let to = folder.path().join(path);
            fs::create_dir_all(to.parent().expect("a folder")).expect("a new folder");
            fs::copy(from.join(path), to).expect("a copy");
        }
        Self { folder }
    }

    /// A book with nothing but `club.yaml`.
    pub(crate) fn empty() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        fs::write(folder.path().join("club.yaml"), "logbook: 1\n").expect("a new file");
        Self { folder }
    }

    pub(crate) fn path(&self, path: &str) -> std::path::PathBuf {
        self.folder.path().join(path)
    }

    pub(crate) fn text(&self, path: &str) -> String {
        fs::read_to_string(self.path(path)).expect("a text")
    }

    /// Changes the first `from` of a file.
    pub(crate) fn edit(self, path: &str, from: &str, to: &str) -> Self {
        let text = self.text(path);
        assert!(text.contains(from), "{path} does not hold {from:?}");
        fs::write(self.path(path), text.replacen(from, to, 1)).expect("a written file");
        self
    }

    /// With the first gap too tight: a danger.
    pub(crate) fn tight() -> Self {
        Self::new().edit(BOAT, "gap: 60", "gap: 55")
    }

    /// With a pin that leans: a fault.
    pub(crate) fn leaning() -> Self {
        Self::new().edit(BOAT, "lean: {aft: 0.5", "lean: {aft: 6")
    }

    pub(crate) fn command(&self, arguments: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
        command.args(arguments).current_dir(self.folder.path()).stdin(Stdio::null());
        for variable in ["NO_COLOR", "CLICOLOR_FORCE", "COLUMNS"] {
            command.env_remove(variable);
        }
        command
    }

    pub(crate) fn run(&self, arguments: &[&str]) -> Run {
        Run::of(&mut self.command(arguments))
    }

    pub(crate) fn lint(&self, arguments: &[&str]) -> Run {
        self.run(&[&["lint", "--as-of", "2026-11-01"], arguments].concat())
    }
}

impl Run {
    pub(crate) fn of(command: &mut Command) -> Self {
        let output = command.output().expect("the program runs");
        Self {
            code: output.status.code(),
            out: String::from_utf8(output.stdout).expect("UTF-8"),
            err: String::from_utf8(output.stderr).expect("UTF-8"),
        }
    }

    #[track_caller]
    pub(crate) fn ends(self, code: i32) -> Self {
        assert_eq!(self.code, Some(code), "out: {}\nerr: {}", self.out, self.err);
        self
    }
}
