//! The invented club's book: the same every time, whoever writes it, and true to what it tells.

#[path = "sample/story.rs"]
mod story;
#[path = "sample/writing.rs"]
mod writing;

use std::path::Path;
use std::process::Command;
use std::process::Stdio;

use git2::Repository;

/// What `main` stands at. It changes with every change of the story or its records: then take the
/// id that the test `the_ids_are_the_same_every_time` prints, and look for other places that show
/// ids of the sample.
const HEAD: &str = "4b1d4861faaa0cd9836799a0234cf25a8f13959e";

/// What a run came to.
struct Run {
    code: Option<i32>,
    out: String,
    err: String,
}

fn sample(folder: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    command.arg("sample").arg(folder).stdin(Stdio::null());
    command
}

fn run(command: &mut Command) -> Run {
    let output = command.output().expect("the program runs");
    Run {
        code: output.status.code(),
        out: String::from_utf8(output.stdout).expect("UTF-8"),
        err: String::from_utf8(output.stderr).expect("UTF-8"),
    }
}

#[track_caller]
fn write(folder: &Path) -> Repository {
    let run = run(&mut sample(folder));
    assert_eq!((run.code, run.err.as_str()), (Some(0), ""), "{}", run.out);
    Repository::open(folder).expect("a repository")
}

fn head(repository: &Repository) -> String {
    let head = repository.head().expect("a head").peel_to_commit().expect("a commit");
    head.id().to_string()
}
