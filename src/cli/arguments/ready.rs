//! What may stand on the command line of `ready`.

use std::path::PathBuf;

use clap::Args;
use clap::ValueEnum;

use super::FailOn;
use super::LookOptions;
use super::day;
use crate::units::Date;

pub(super) const EXITS: &str = "\
The page says what the book holds of a boat, never that she is fit to go.

Exit codes:
  0  nothing at or above the failing level
  1  findings at or above it; danger on a boat in use always counts
  2  wrong usage, or a club.yaml that can't be used
  3  could not check: nothing to check, or something that can't be read
  4  a fault of the program";

#[derive(Args, Debug)]
pub(in crate::cli) struct Ready {
    /// The boats, by their ids [default: every boat]
    #[arg(value_name = "BOAT")]
    pub(in crate::cli) boats: Vec<String>,

    /// The day she is to go afloat, such as 2026-11-28 [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) on: Option<Date>,

    /// Tell also what changed since this tag, commit or branch, such as that of the last race
    #[arg(long, value_name = "TAG")]
    pub(in crate::cli) since: Option<String>,

    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,

    /// From which level on the exit code is 1; danger counts always, even with never
    #[arg(long, value_name = "LEVEL", value_enum, default_value = "fault")]
    pub(in crate::cli) fail_on: FailOn,

    /// text is a page to print for each boat, 80 columns wide; json is for programs; markdown is
    /// for a web page
    #[arg(long, value_enum, default_value = "text")]
    pub(in crate::cli) format: ReadyFormat,

    #[command(flatten)]
    pub(in crate::cli) look: LookOptions,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum ReadyFormat {
    Text,
    Json,
    Markdown,
}
