//! Results to standard output, everything else to standard error.

use std::io;
use std::io::BufWriter;
use std::io::ErrorKind;
use std::io::Write as _;

use super::exit::Exit;

/// What a command came to.
#[derive(Debug)]
pub(super) struct Done {
    pub(super) exit: Exit,
    /// The result.
    pub(super) result: String,
    /// What the user should know besides, ready to be shown.
    pub(super) told: Vec<String>,
}

impl Done {
    /// A result, and nothing to say besides.
    pub(super) fn result(result: String) -> Self {
        Self { exit: Exit::Clear, result, told: Vec::new() }
    }

    /// No result, but a reason.
    pub(super) fn refused(exit: Exit, told: Vec<String>) -> Self {
        Self { exit, result: String::new(), told }
    }
}

/// Hands over what a command came to, and returns the exit code.
///
/// A reader that has seen enough and closed the pipe changes nothing.
pub(super) fn hand_over(done: Done) -> Exit {
    tell(&done.told);
    let mut out = BufWriter::new(io::stdout().lock());
    let written = out.write_all(done.result.as_bytes()).and_then(|()| out.flush());
    match written {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            tell(&[format!("The result could not be written: {error}")]);
            done.exit.max(Exit::NotChecked)
        }
        _ => done.exit,
    }
}

/// Tells the user something that is no result. Where nobody listens, nothing is told.
pub(super) fn tell(lines: &[String]) {
    let mut err = io::stderr().lock();
    for line in lines {
        let _ = writeln!(err, "{line}");
    }
}
