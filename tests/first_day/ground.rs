//! The empty repository in which the first day begins, and the hand that types.

use std::fs;
use std::process::Command;
use std::process::Stdio;

use git2::Repository;
use rexpect::reader::Options;
use rexpect::session::spawn_with_options;
use tempfile::TempDir;

use super::page::Screen;

/// A slow machine that does much else.
const PATIENCE_MS: u64 = 20_000;

/// A repository of Ines Marlow.
pub(crate) struct Ground(TempDir);

impl Ground {
    pub(crate) fn new() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let git = Repository::init(folder.path()).expect("a repository");
        let mut config = git.config().expect("settings");
        config.set_str("user.name", "Ines Marlow").expect("a name");
        config.set_str("user.email", "ines@club.example").expect("an address");
        let answers = fs::read("tests/data/first-day/oars.txt").expect("the answers");
        fs::write(folder.path().join("oars.txt"), answers).expect("written");
        Self(folder)
    }

    /// Runs a command and returns what it says, as it stands on the screen.
    pub(crate) fn said(&self, screen: &Screen) -> String {
        match screen.typed {
            Some(file) => self.talked(screen, &fs::read_to_string(file).expect("what is typed")),
            None => self.ran(screen),
        }
    }

    fn command(&self, screen: &Screen) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
        let quoted = screen.command.split('"').enumerate();
        for (number, part) in quoted {
            match number % 2 {
                1 => command.arg(part),
                _ => command.args(part.split_whitespace()),
            };
        }
        command.current_dir(self.0.path()).env("COLUMNS", "80").env("NO_COLOR", "1");
        command
    }

    fn ran(&self, screen: &Screen) -> String {
        let output = self.command(screen).stdin(Stdio::null()).output().expect("it runs");
        let said = [output.stdout, output.stderr].concat();
        let said = String::from_utf8(said).expect("UTF-8");
        assert_eq!(output.status.code(), Some(0), "{}: {said}", screen.command);
        said
    }

    /// Types each answer when its prompt is there. What stands between lines of dots is left out.
    fn talked(&self, screen: &Screen, typed: &str) -> String {
        let mut command = self.command(screen);
        // A terminal that moves no cursor: what it shows is the text alone.
        command.env("TERM", "dumb");
        let options = Options::default().timeout_ms(Some(PATIENCE_MS));
        let mut hand = spawn_with_options(command, options).expect("a terminal");
        let (mut said, mut shows) = (String::new(), true);
        for line in typed.lines().filter(|line| !line.is_empty() && !line.starts_with('#')) {
            let Some((prompt, answer)) = line.split_once(" =>") else {
                let last = hand.exp_string("\r\n").expect("the end of a screen");
                said += &if shows { text_of(&last) + "\n…\n\n" } else { String::new() };
                shows = !shows;
                continue;
            };
            let asks = format!("{prompt}[^:\n]*(: |\\(yes or no\\) )");
            let asked = hand.exp_regex(&asks);
            let (before, asked) = asked.unwrap_or_else(|error| panic!("{line}: {error}"));
            // This terminal does not show what is typed.
            let answer = answer.trim_start();
            said += &if shows {
                text_of(&before) + &text_of(&asked) + answer + "\n"
            } else {
                String::new()
            };
            hand.send_line(answer).expect("typed");
        }
        said += &text_of(&hand.exp_eof().expect("the end"));
        with_one_id(&said)
    }

    /// Returns what is worked out of the boat that was measured here, and of the same one in a book.
    pub(crate) fn sums_here_and_in(&self, book: &str) -> [serde_json::Value; 2] {
        let here = self.0.path().to_string_lossy();
        [&here, book].map(|book| {
            let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
            command.args(["derive", "fulmar", "--format", "json", "--book", book]);
            let output = command.output().expect("it runs");
            let said: serde_json::Value = serde_json::from_slice(&output.stdout).expect("JSON");
            said["boats"].clone()
        })
    }
}

/// The terminal is read byte by byte: returns the text of it, without the carriage returns.
fn text_of(read: &str) -> String {
    let bytes = read.chars().filter(|own| *own != '\r').map(u8::try_from);
    let bytes: Vec<u8> = bytes.collect::<Result<_, _>>().expect("bytes");
    String::from_utf8(bytes).expect("UTF-8")
}

/// The id of a commit has the hour in it: one stands for all.
fn with_one_id(said: &str) -> String {
    let (before, after) = said.split_once("Committed as ").expect("it is committed");
    let (id, after) = after.split_at(8);
    assert!(id.chars().all(|digit| digit.is_ascii_hexdigit()), "{id}");
    format!("{before}Committed as 0baf67f7{after}")
}
