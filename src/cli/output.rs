//! Results to standard output, everything else to standard error.

use std::fs;
use std::fs::File;
use std::io;
use std::io::BufWriter;
use std::io::ErrorKind;
use std::io::Write as _;
use std::path::Path;
use std::path::PathBuf;

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

/// Writes beside the file, then puts it in its place: never half a file. A link to a file stays.
pub(super) fn whole_file(path: &Path, text: impl AsRef<[u8]>) -> io::Result<()> {
    let path = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    if fs::metadata(&path).is_ok_and(|there| !there.is_file()) {
        return Err(io::Error::other("what is there is no file"));
    }
    let (beside, mut file) = beside(&path)?;
    let written = file.write_all(text.as_ref()).and_then(|()| file.sync_all());
    let placed = written.and_then(|()| fs::rename(&beside, &path));
    if placed.is_err() {
        // Why it could not be written is told; that its beginning can't be removed says no more.
        let _ = fs::remove_file(&beside);
    }
    placed
}

/// Makes a file beside another, of a name that nothing has.
fn beside(path: &Path) -> io::Result<(PathBuf, File)> {
    let mut number = 0_u32;
    loop {
        let mut name = path.file_name().unwrap_or_default().to_owned();
        name.push(format!(".new{number}"));
        let beside = path.with_file_name(name);
        match File::create_new(&beside) {
            Err(error) if error.kind() == ErrorKind::AlreadyExists && number < 1000 => number += 1,
            made => return Ok((beside, made?)),
        }
    }
}

/// Tells the user something that is no result. Where nobody listens, nothing is told.
pub(super) fn tell(lines: &[String]) {
    let mut err = io::stderr().lock();
    for line in lines {
        let _ = writeln!(err, "{line}");
    }
}
