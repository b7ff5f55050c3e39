//! What may stand on the command line of the commands that plan work.

use std::path::PathBuf;

use clap::Args;
use clap::ValueEnum;

use super::LookOptions;
use super::day;
use crate::units::Date;

pub(super) const WORKLIST_EXITS: &str = "\
The boat as she should read after the work:
  tholebook worklist kittiwake --result - |
    tholebook lint --name boats/kittiwake.yaml -
A record that was worked out says so: predicted: true. Nobody measured it; never
put it into the book.

Exit codes:
  0  nothing to do
  1  work to do, something to read again, or something this work doesn't cure
  2  wrong usage, or a club.yaml that can't be used
  3  could not plan all of it: something was not measured or can't be read
  4  a fault of the program";

#[derive(Args, Debug)]
pub(in crate::cli) struct Worklist {
    /// The boat, by her id
    #[arg(value_name = "BOAT")]
    pub(in crate::cli) boat: String,

    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,

    /// Write what the work should make of her readings: - prints her record in place of the list,
    /// a new folder outside the book gets the whole book with it
    #[arg(long, value_name = "FOLDER|-")]
    pub(in crate::cli) result: Option<PathBuf>,

    /// text is to be read at the boat; json is for programs, with every digit and the result
    #[arg(long, value_enum, default_value = "text")]
    pub(in crate::cli) format: WorklistFormat,

    /// The day to take for today, such as 2026-10-17 [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) as_of: Option<Date>,

    #[command(flatten)]
    pub(in crate::cli) look: LookOptions,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum WorklistFormat {
    Text,
    Json,
}
