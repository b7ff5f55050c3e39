//! Books with a finding of every kind, and the program run over them.

use std::fs;
use std::path::Path;

use tempfile::TempDir;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::edit;
use crate::club::sound;
use crate::run::DAY;
use crate::run::Run;
use crate::run::TODAY;
use crate::run::lint_in;

/// The sound book with other gaps, seat by seat.
pub(crate) fn with_gaps(gaps: [&str; 4]) -> Files {
    let mut files = sound();
    for (seat, gap) in (1..).zip(gaps) {
        edit(&mut files, BOAT, &format!("seat: {seat}"), "gap: 60", &format!("gap: {gap}"));
    }
    files
}

/// A repository whose last commit left one gap as it was, made one worse, cured one and spoilt one.
pub(crate) fn all_states() -> Club {
    let club = Club::new();
    let first = club.commit(DAY - 5, &[], &with_gaps(["55", "55", "55", "60"]));
    let files = with_gaps(["55", "54", "60", "55"]);
    let head = club.commit(DAY - 1, &[first], &files);
    club.check_out(head, &files);
    club
}

/// The sound book in a folder that is no repository, with some files written over.
pub(crate) fn folder(files: &[(&str, &str)]) -> TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    let sound = sound();
    let sound = sound.iter().map(|(path, text)| (&**path, &**text));
    for (path, text) in sound.chain(files.iter().copied()) {
        let path = folder.path().join(path);
        fs::create_dir_all(path.parent().expect("a folder")).expect("a new folder");
        fs::write(path, text).expect("a written file");
    }
    folder
}

/// Runs `lint` with a format, on the day that these tests are on.
pub(crate) fn lint_as(folder: &Path, format: &str, more: &[&str]) -> Run {
    lint_in(folder, &[&["--as-of", TODAY, "--format", format], more].concat())
}

/// The example club as it comes with the program: waived, unsure, not checked, out of use.
pub(crate) fn example(format: &str, more: &[&str]) -> Run {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    lint_as(here, format, &[&["example-club"], more].concat())
}
