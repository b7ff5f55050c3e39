//! What git asks for when it compares and merges records.

use std::path::PathBuf;

use clap::Args;

pub(super) const EXITS: &str = "\
The joined text is written to OURS. Where both sides changed one value
differently, or where the sides are safe by themselves and not together, both
forms stand there between marks, as git makes them.

Exit codes:
  0  joined; with --path, there is no danger or fault that neither side had
  1  in conflict: look at the marks in OURS, and at what is said here
  2  wrong usage
  3  could not read or write; OURS is as it was
  4  a fault of the program";

pub(super) const WIRE_EXITS: &str = "\
Exit codes:
  0  done; with --check: all as it should be
  1  with --check: something is not
  2  wrong usage
  3  something that can't be read or written
  4  a fault of the program";

#[derive(Args, Debug)]
pub(in crate::cli) struct Wire {
    /// Only say what is as it should be and what is not; nothing is written
    #[arg(long)]
    pub(in crate::cli) check: bool,

    /// Allow a program that lies among the repository's own files
    #[arg(long)]
    pub(in crate::cli) program_among_files: bool,

    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct Unwire {
    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct View {
    /// The file; one that can't be read as a record is shown as it is
    #[arg(value_name = "FILE")]
    pub(in crate::cli) file: PathBuf,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct Splice {
    /// The text that both sides began from
    #[arg(value_name = "BASE")]
    pub(in crate::cli) base: PathBuf,

    /// Our text; the joined one is written here
    #[arg(value_name = "OURS")]
    pub(in crate::cli) ours: PathBuf,

    /// Their text
    #[arg(value_name = "THEIRS")]
    pub(in crate::cli) theirs: PathBuf,

    /// The file of the book that the texts are of; without it nothing is checked for being unsafe
    /// together
    #[arg(long, value_name = "PATH")]
    pub(in crate::cli) path: Option<PathBuf>,

    /// How many signs a mark has
    #[arg(long, value_name = "N", default_value_t = 7, value_parser = clap::value_parser!(u16).range(1..=200))]
    pub(in crate::cli) marks: u16,

    /// The book's folder [default: the book around PATH]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,
}
