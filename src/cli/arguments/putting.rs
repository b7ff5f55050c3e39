//! What may be said to the commands that write records.

use std::path::PathBuf;

use clap::Args;

pub(super) const DERIVE_EXITS: &str = "\
Exit codes, with --write:
  0  every value is written, or was right
  1  a file holds what can't be read and was left as it was
  2  wrong usage, or a club.yaml that can't be used
  3  a file could not be written; it is as it was
  4  a fault of the program";

pub(super) const MEND_EXITS: &str = "\
Only how something is spelled is ever changed: a unit, a decimal comma, a dash
for a minus, a key with a slip in it. No digit is.

Exit codes:
  0  shown, or with --write: written
  2  wrong usage
  3  a file that can't be read, or could not be written; it is as it was
  4  a fault of the program";

#[derive(Args, Debug)]
pub(in crate::cli) struct Mend {
    /// Only what has this name or is below it, such as kittiwake/seat-2 [default: the whole book]
    #[arg(value_name = "NAME")]
    pub(in crate::cli) name: Option<String>,

    /// Write the corrections into the files
    #[arg(long)]
    pub(in crate::cli) write: bool,

    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,
}
