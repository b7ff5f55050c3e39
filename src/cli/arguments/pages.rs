//! What is asked of the pages of a book.

use std::path::PathBuf;

use clap::Args;

use super::day;
use crate::units::Date;

pub(in crate::cli) const PAGES_HELP: &str = "\
Open index.html of the folder in any browser; the pages need no network.
Only what differs is written; pages of records that are gone are taken away.
Stature, leg and weight are left out unless club.yaml says publish-crew: true.

Exit codes are those of card: the pages do not gate.
  0  written
  2  wrong usage, a folder that can't be used, or a club.yaml that can't be
  3  could not write, or the book can't be had
  4  a fault of the program";

#[derive(Args, Debug)]
pub(in crate::cli) struct Pages {
    /// The folder to write them into: a new one, an empty one, or one that this command made
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) out: PathBuf,

    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,

    /// The day to take for today, such as 2026-10-17 [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) as_of: Option<Date>,
}
