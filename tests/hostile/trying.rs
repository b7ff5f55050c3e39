//! Runs one command and holds what it says to what may ever be said.

use std::io::Read;
use std::path::Path;
use std::process::Child;
use std::process::Command;
use std::process::Stdio;
use std::thread;
use std::time::Duration;
use std::time::Instant;

use tholebook::reports::shown::is_hidden;

/// What hangs is told as such; no command takes a tenth of it.
const PATIENCE: Duration = Duration::from_secs(240);

/// What a run came to.
pub(crate) struct Tried {
    pub(crate) code: Option<i32>,
    pub(crate) out: String,
    pub(crate) err: String,
}

/// Runs the program in a folder, with a text on its standard input.
pub(crate) fn run(folder: &Path, words: &[&str], input: &[u8]) -> Tried {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    command.args(words).current_dir(folder).env("COLUMNS", "80").env_remove("NO_COLOR");
    command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
    let mut child = command.spawn().expect("the program runs");
    let (out, err) = (child.stdout.take(), child.stderr.take());
    let reading = [
        thread::spawn(move || text(out.expect("a pipe"))),
        thread::spawn(move || text(err.expect("a pipe"))),
    ];
    // A command that does not read its input closes it.
    let _ = std::io::Write::write_all(&mut child.stdin.take().expect("a pipe"), input);
    let code = ended(&mut child, words);
    let [out, err] = reading.map(|thread| thread.join().expect("what was said"));
    Tried { code, out, err }
}

fn text(mut from: impl Read) -> String {
    let mut bytes = Vec::new();
    from.read_to_end(&mut bytes).expect("what was said");
    String::from_utf8(bytes).expect("UTF-8 only")
}

fn ended(child: &mut Child, words: &[&str]) -> Option<i32> {
    let begun = Instant::now();
    loop {
        if let Some(status) = child.try_wait().expect("a program") {
            return status.code();
        }
        if begun.elapsed() > PATIENCE {
            child.kill().expect("it is stopped");
            panic!("{words:?} does not end");
        }
        thread::sleep(Duration::from_millis(2));
    }
}

impl Tried {
    /// Asserts that it ended as a command may, and that nothing of it is obeyed.
    #[track_caller]
    pub(crate) fn is_harmless(&self, words: &[&str]) {
        let Self { code, out, err } = self;
        assert!(matches!(code, Some(0..=3)), "{words:?} ended with {code:?}: {err}");
        for text in [out, err] {
            // Between two pages of `ready`, so that a printer begins anew.
            let feeds = words.starts_with(&["ready"]);
            let steers = |c: char| c != '\n' && is_hidden(c) && !(feeds && c == '\u{c}');
            let at = text.find(steers);
            assert!(at.is_none(), "{words:?}: {:?}", around(text, at.unwrap_or_default()));
            let order = obeyed(text, words.contains(&"github"));
            assert!(order.is_none(), "{words:?}: {order:?}");
        }
        if words.contains(&"json") && !out.is_empty() {
            let json = serde_json::from_str::<serde_json::Value>(out);
            assert!(json.is_ok(), "{words:?}: {json:?}");
        }
    }
}

/// Returns a line that a build server would take for an order; annotations were asked for, where
/// they are the format.
fn obeyed(text: &str, annotations: bool) -> Option<&str> {
    let is_order = |line: &str| {
        let line = line.trim_start();
        let asked = ["::error ", "::warning ", "::notice "];
        let colons = line.starts_with("::")
            && !(annotations && asked.iter().any(|kind| line.starts_with(kind)));
        colons || line.contains("##[") || line.contains("##vso[")
    };
    text.lines().find(|line| is_order(line))
}

fn around(text: &str, at: usize) -> String {
    let before: String = text[..at].chars().rev().take(60).collect();
    let after: String = text[at..].chars().take(60).collect();
    format!("{}{after}", before.chars().rev().collect::<String>())
}
