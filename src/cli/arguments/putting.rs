//! What may be said to the commands that write records.

use std::path::PathBuf;

use clap::Args;

use super::day;
use crate::units::Date;

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

pub(super) const WAIVE_EXITS: &str = "\
Exit codes:
  0  the waiver is written
  2  refused: a danger, no such finding, or what the club does not allow
  3  the book could not be read, or the file not written; it is as it was
  4  a fault of the program";

#[derive(Args, Debug)]
pub(in crate::cli) struct Waive {
    /// The name of the finding, such as kittiwake/seat-2/handle-past-mark
    #[arg(value_name = "NAME")]
    pub(in crate::cli) name: String,

    /// Its rule, such as handle-past-mark-wrong
    #[arg(value_name = "RULE")]
    pub(in crate::cli) rule: String,

    /// Why the club lives with it
    #[arg(long, value_name = "WHY")]
    pub(in crate::cli) because: String,

    /// Who grants it
    #[arg(long, value_name = "PERSON")]
    pub(in crate::cli) by: String,

    /// The last day it counts, such as 2026-12-31
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) until: Date,

    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,

    /// The day to take for today, such as 2026-10-17 [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) as_of: Option<Date>,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct Waivers {
    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,

    /// The day to take for today, such as 2026-10-17 [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) as_of: Option<Date>,
}
