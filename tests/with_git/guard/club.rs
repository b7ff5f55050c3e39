//! A club's repository with the sound book as of today, and what is done to it.

use std::fs;
use std::io::Write as _;
use std::path::Path;
use std::path::PathBuf;
use std::process::Command;
use std::process::Output;
use std::process::Stdio;

use jiff::ToSpan as _;
use jiff::civil::Date;

use crate::git::Yard;
use crate::git::done;
use crate::git::run;
use crate::git::write;

pub(crate) const BOAT: &str = "boats/kittiwake.yaml";
pub(crate) const OARS: &str = "oars/long-ash.yaml";
pub(crate) const CREW: &str = "crews/masters-a.yaml";
pub(crate) const PROGRAM: &str = env!("CARGO_BIN_EXE_tholebook");

pub(crate) struct Club {
    pub(crate) yard: Yard,
    pub(crate) folder: PathBuf,
}

impl Club {
    /// A repository whose book is at its top.
    pub(crate) fn new() -> Self {
        Self::at("")
    }

    /// A repository whose book is in a folder of it.
    pub(crate) fn at(below: &str) -> Self {
        let yard = Yard::new();
        done(&yard.folder, &["init", "--quiet", "--initial-branch=main", "club"]);
        let folder = yard.folder.join("club");
        book(&folder.join(below));
        let club = Self { yard, folder };
        club.committed("the book");
        club
    }

    /// The same with the hooks of a clone.
    pub(crate) fn guarded() -> Self {
        let club = Self::new();
        club.guard(&["install"]);
        club
    }

    /// A bare repository beside the club's, with a gate, and what it says of the club's `origin`.
    pub(crate) fn server(&self) -> PathBuf {
        done(
            &self.yard.folder,
            &["init", "--quiet", "--bare", "--initial-branch=main", "server.git"],
        );
        let server = self.yard.folder.join("server.git");
        let output = program(&server, &["guard", "install"], "");
        assert!(output.status.success(), "{}", said(&output));
        done(&self.folder, &["remote", "add", "origin", "../server.git"]);
        server
    }

    /// Runs `guard`, which must succeed.
    #[track_caller]
    pub(crate) fn guard(&self, words: &[&str]) -> String {
        let output = program(&self.folder, &[&["guard"], words].concat(), "");
        assert!(output.status.success(), "{}", said(&output));
        said(&output)
    }

    /// Commits everything, unguarded.
    pub(crate) fn committed(&self, what: &str) {
        done(&self.folder, &["add", "--all"]);
        done(&self.folder, &["commit", "--quiet", "--no-verify", "--message", what]);
    }

    /// Makes the boat one that must not go afloat.
    pub(crate) fn unfit(&self) {
        edit(&self.folder, BOAT, "walk-round", "hull: ok", "hull: unfit");
    }

    /// Makes a change that nobody minds.
    pub(crate) fn remark(&self, words: &str) {
        let text = fs::read_to_string(self.folder.join(CREW)).expect("a crew");
        write(&self.folder, CREW, &format!("{text}# {words}\n"));
    }

    /// Makes two branches, each sound, of which git makes a boat that is not: `spare` has a thicker
    /// spare oar, `main` a narrower gap.
    pub(crate) fn parted(&self) {
        done(&self.folder, &["switch", "--quiet", "--create", "spare"]);
        edit(&self.folder, OARS, "oar: A5", "widest: 52", "widest: 53.3");
        edit(&self.folder, OARS, "measured", "date: 2026-10-03", "date: 2026-10-24");
        self.passes(&["commit", "--all", "--message", "a thicker spare"]);
        done(&self.folder, &["switch", "--quiet", "main"]);
        edit(&self.folder, BOAT, "seat: 2", "gap: 60", "gap: 58");
        edit(&self.folder, BOAT, "seat: 2", "clearance: 8.0", "clearance: 6.0");
        edit(&self.folder, BOAT, "rigged", "date: 2026-10-17", "date: 2026-10-24");
        self.passes(&["commit", "--all", "--message", "a narrower gap"]);
    }

    /// Runs git, which must be let through.
    #[track_caller]
    pub(crate) fn passes(&self, words: &[&str]) -> String {
        let output = run(&self.folder, words);
        assert!(output.status.success(), "git {words:?}: {}", said(&output));
        said(&output)
    }

    /// Runs git, which must be stopped for the word.
    #[track_caller]
    pub(crate) fn stopped(&self, words: &[&str], because: &str) -> String {
        let output = run(&self.folder, words);
        let said = said(&output);
        assert!(!output.status.success(), "git {words:?} was let through: {said}");
        assert!(said.contains(because), "git {words:?}: {said}");
        said
    }

    pub(crate) fn commits(&self) -> String {
        done(&self.folder, &["rev-list", "--count", "HEAD"])
    }
}

/// Lays a sound book of today into a folder.
pub(crate) fn book(folder: &Path) {
    let from = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/sound-book");
    for path in ["club.yaml", BOAT, OARS, CREW] {
        let text = fs::read_to_string(from.join(path)).expect("a text");
        write(folder, path, &of_today(&text));
    }
}

/// Adds a boat, made of the first; `hull` is what was found on her.
pub(crate) fn second_boat(club: &Club, hull: &str) {
    let text = fs::read_to_string(club.folder.join(BOAT)).expect("a boat");
    let second = text.replace("boat: kittiwake", "boat: fulmar").replace("hull: ok", hull);
    write(&club.folder, "boats/fulmar.yaml", &second.replace("name: Kittiwake", "name: Fulmar"));
}

/// Moves every day of a text as far as today is from 2026-11-01.
pub(crate) fn of_today(text: &str) -> String {
    let today = jiff::ZonedDateTime::now().date();
    let then = jiff::civil::date(2026, 11, 1);
    let moved = (today - then).get_days();
    let mut out = String::new();
    let mut rest = text;
    while let Some(at) = rest.find("2026-") {
        let day: Option<Date> = rest.get(at..at + 10).and_then(|day| day.parse().ok());
        let day = day.and_then(|day| day.checked_add(moved.days()).ok());
        let kept = if day.is_some() { at } else { at + 5 };
        out.push_str(&rest[..kept]);
        out.push_str(&day.map(|day| day.to_string()).unwrap_or_default());
        rest = &rest[if day.is_some() { at + 10 } else { kept }..];
    }
    out + rest
}

/// Changes the first `from` after the first `after`.
#[track_caller]
pub(crate) fn edit(folder: &Path, path: &str, after: &str, from: &str, to: &str) {
    let (from, to) = (of_today(from), of_today(to));
    let text = fs::read_to_string(folder.join(path)).expect("a text");
    let (before, rest) = text.split_at(text.find(after).expect("the text before"));
    assert!(rest.contains(&from), "{path} does not hold {from:?}");
    write(folder, path, &format!("{before}{}", rest.replacen(&from, &to, 1)));
}

/// Runs this program as a person in a folder would.
pub(crate) fn program(folder: &Path, words: &[&str], input: &str) -> Output {
    let mut command = Command::new(PROGRAM);
    for name in ["GIT_DIR", "GIT_INDEX_FILE", "GIT_WORK_TREE", "GIT_OBJECT_DIRECTORY"] {
        command.env_remove(name);
    }
    command.env("GIT_CONFIG_GLOBAL", "/dev/null").current_dir(folder).args(words);
    told(&mut command, input)
}

/// Runs a command with something on its standard input.
pub(crate) fn told(command: &mut Command, input: &str) -> Output {
    command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
    let mut child = command.spawn().expect("it begins");
    let mut pipe = child.stdin.take().expect("a pipe");
    // Who has heard enough may close it.
    let _ = pipe.write_all(input.as_bytes());
    drop(pipe);
    child.wait_with_output().expect("it ends")
}

/// Returns all that was said.
pub(crate) fn said(output: &Output) -> String {
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    format!("{}{}", text(&output.stdout), text(&output.stderr))
}

/// Puts a hook of another program into a repository.
pub(crate) fn other_hook(git_dir: &Path, name: &str, text: &str) {
    let file = git_dir.join("hooks").join(name);
    fs::create_dir_all(git_dir.join("hooks")).expect("a folder");
    fs::write(&file, text).expect("a file");
    #[cfg(unix)]
    fs::set_permissions(&file, std::os::unix::fs::PermissionsExt::from_mode(0o755)).expect("ours");
}
