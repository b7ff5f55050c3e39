//! What is asked of a page to print.

use std::path::PathBuf;

use clap::Args;

use super::day;
use crate::units::Date;

pub(in crate::cli) const SHEET_HELP: &str = "\
The page is HTML on standard output: tholebook sheet kittiwake > kittiwake.html
Open it in any browser and print it on A4; it needs no network.
The rig card is one page, a blank sheet is two sides.

Exit codes are those of card: the page does not gate.";

#[derive(Args, Debug)]
pub(in crate::cli) struct Sheet {
    /// The boat, by her id
    #[arg(value_name = "BOAT")]
    pub(in crate::cli) boat: String,

    /// A page to write on at the boat, in the order of the work
    #[arg(long)]
    pub(in crate::cli) blank: bool,

    /// On a blank page: show what was read last time
    #[arg(long, requires = "blank", conflicts_with = "twice")]
    pub(in crate::cli) last: bool,

    /// On a blank page: a column for a second reader, who must not see earlier values
    #[arg(long, requires = "blank")]
    pub(in crate::cli) twice: bool,

    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,

    /// The day to take for today, such as 2026-10-17 [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) as_of: Option<Date>,
}
