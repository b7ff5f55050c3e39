//! Books to make pages of, each in a folder of its own.

use std::fs;
use std::path::Path;
use std::path::PathBuf;
use std::process::Command;

use tempfile::TempDir;

/// The day that is taken for today.
pub(crate) const DAY: &str = "2026-11-01";

/// A book in a folder, with room beside it.
pub(crate) struct Club {
    folder: TempDir,
}

/// What a run came to.
#[allow(dead_code, reason = "each of the test programs uses some")]
pub(crate) struct Run {
    pub(crate) code: Option<i32>,
    pub(crate) out: String,
    pub(crate) err: String,
}

#[allow(dead_code, reason = "each of the test programs uses some")]
impl Club {
    /// A copy of the example, in no repository.
    pub(crate) fn example() -> Self {
        let club = Self::empty();
        copy(Path::new("example-club"), &club.path(""));
        club
    }

    /// A book with nothing but its settings.
    pub(crate) fn empty() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        fs::create_dir(folder.path().join("book")).expect("a folder");
        let club = Self { folder };
        fs::write(club.path("club.yaml"), "logbook: 1\n").expect("a file");
        club
    }

    /// An invented club with two seasons of commits.
    pub(crate) fn sample() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let club = Self { folder };
        let book = club.path("").display().to_string();
        let run = run(&["sample", &book]);
        assert_eq!(run.code, Some(0), "{}", run.err);
        club
    }

    /// The example, every text of a kind that wishes to be more than words.
    pub(crate) fn hostile() -> Self {
        let long = "Long".repeat(75);
        let harm = r#"'<script>alert(1)</script>"><img src=x onerror=alert(1)>'"#;
        Self::example()
            .edit("club.yaml", "club: Tarrow Head Boat Club", &format!("club: {harm}"))
            .edit("boats/kittiwake.yaml", "name: Kittiwake", &format!("name: {harm}"))
            .edit("boats/fulmar.yaml", "name: Fulmar", &format!("name: {long}"))
            .edit("boats/gannet.yaml", "name: Gannet", "name: \"Gan\\u202Enet\\u200B\\a\"")
            .edit("boats/turnstone.yaml", "because: cracked pin", &format!("because: {harm}"))
            .edit(
                "boats/kittiwake.yaml",
                "where: after edge of thwart 2",
                &format!("where: {harm}"),
            )
            .edit("boats/sanderling.yaml", "by: Ines Marlow", &format!("by: {harm}"))
            .edit("waivers.yaml", "because: ", &format!("because: {harm} # "))
            .edit("crews/masters-a.yaml", "who: I.M.", &format!("who: {harm}"))
            .edit("crews/juniors.yaml", "who: ", &format!("who: {long} # "))
    }

    /// A path in the book.
    pub(crate) fn path(&self, path: &str) -> PathBuf {
        let book = self.folder.path().join("book");
        if path.is_empty() { book } else { book.join(path) }
    }

    /// A path beside the book.
    pub(crate) fn beside(&self, path: &str) -> PathBuf {
        self.folder.path().join(path)
    }

    /// Changes the first `from` of a file.
    #[track_caller]
    pub(crate) fn edit(self, path: &str, from: &str, to: &str) -> Self {
        let text = fs::read_to_string(self.path(path)).expect("a text");
        assert!(text.contains(from), "{path} does not hold {from:?}");
        fs::write(self.path(path), text.replacen(from, to, 1)).expect("a written file");
        self
    }

    /// Writes the pages beside the book and returns their folder.
    #[track_caller]
    pub(crate) fn pages(&self) -> PathBuf {
        let out = self.beside("pages");
        let told = self.run(&out);
        assert_eq!(told.code, Some(0), "{}", told.err);
        out
    }

    /// Writes a sheet of every boat beside the book and returns their folder.
    #[track_caller]
    pub(crate) fn sheets(&self, folder: &str, options: &[&str]) -> PathBuf {
        let out = self.beside(folder);
        fs::create_dir(&out).expect("a folder");
        for boat in names_in(&self.path("boats")) {
            let id = boat.trim_end_matches(".yaml");
            let told = self.told(&[&["sheet", id, "--as-of", DAY], options].concat());
            assert!(matches!(told.code, Some(0 | 1)), "{}", told.err);
            fs::write(out.join(format!("{id}.html")), told.out).expect("a page");
        }
        out
    }

    /// Writes the pages into a folder.
    pub(crate) fn run(&self, out: &Path) -> Run {
        self.told(&["pages", "--out", &out.display().to_string(), "--as-of", DAY])
    }

    /// Runs a command on the book.
    pub(crate) fn told(&self, arguments: &[&str]) -> Run {
        let book = self.path("").display().to_string();
        let mut all = arguments.to_vec();
        if !arguments.contains(&"--book") {
            all.extend(["--book", &book]);
        }
        run(&all)
    }
}

fn run(arguments: &[&str]) -> Run {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    let output = command.args(arguments).output().expect("the program runs");
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("UTF-8");
    Run { code: output.status.code(), out: text(output.stdout), err: text(output.stderr) }
}

fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to).expect("a folder");
    for entry in fs::read_dir(from).expect("a folder") {
        let entry = entry.expect("an entry");
        let to = to.join(entry.file_name());
        if entry.path().is_dir() {
            copy(&entry.path(), &to);
        } else {
            fs::copy(entry.path(), to).expect("a copy");
        }
    }
}

/// The names in a folder, sorted.
#[allow(dead_code, reason = "each of the test programs uses some")]
pub(crate) fn names_in(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).expect("a folder");
    let mut names: Vec<String> = entries
        .map(|own| own.expect("an entry").file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    names
}
