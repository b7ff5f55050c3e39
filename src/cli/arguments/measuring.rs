//! What may be said to `measure`.

use std::path::PathBuf;

use clap::Args;

use super::LookOptions;
use super::day;
use crate::units::Date;

pub(super) const HELP: &str = "\
At each question, a value in any unit of the record, such as 58, 5.8 cm,
11 over 176 or [58, 58.5], or:
  Enter  not measured today: the value keeps its old date
  n      not measured: nobody knows it any more
  b      back to the question before
  x      take back what was answered today
  g NAME go to that one: g seat-3, or g seat-3/rowlock/gap
  e      to the end: the rest is not measured today
  ?      how do I measure this?
  q      stop for now; the draft is kept, and the next measure offers it

Exit codes:
  0  measured; nothing wrong is left on this boat or these oars
  1  a danger or a fault is left, she is not level, or two people disagree
  2  wrong usage: no terminal, an unknown name, an answer that can't be read
  3  broken off, or something could not be read or written
  4  a fault of the program";

#[derive(Args, Debug)]
pub(in crate::cli) struct Measure {
    /// The boat, or the oar set, by its id
    #[arg(value_name = "BOAT")]
    pub(in crate::cli) name: String,

    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,

    /// Take the answers from this file, a line each, as name: value; - is standard input
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) from: Option<PathBuf>,

    /// Ask nothing; with --from, for scripts
    #[arg(long, requires = "from")]
    pub(in crate::cli) no_input: bool,

    /// A second person measures without seeing what the first one read; where the two disagree is
    /// listed and makes it exit 1, and nothing is written unless told
    #[arg(long)]
    pub(in crate::cli) second: bool,

    /// Without a question at the end: write the record
    #[arg(long)]
    pub(in crate::cli) write: bool,

    /// Without a question at the end: commit the record, after writing it. Git's hooks are not run,
    /// but the record is judged as they would
    #[arg(long, requires = "write")]
    pub(in crate::cli) commit: bool,

    /// Without a question at the end: a boat out of use is used again, unless a danger stands
    #[arg(long, conflicts_with = "second")]
    pub(in crate::cli) back_in_use: bool,

    /// The day to take for today, such as 2026-10-17 [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) as_of: Option<Date>,

    #[command(flatten)]
    pub(in crate::cli) look: LookOptions,
}
