//! What may stand on the command line of `match`.

use std::path::PathBuf;

use clap::Args;
use clap::ValueEnum;

use super::LookOptions;

pub(super) const EXITS: &str = "\
Exit codes:
  0  every oar tried clears, but for boats that are out of use
  1  something is tight, loose or unknown
  2  wrong usage: no such oar set or boat; or a club.yaml that can't be used
  3  could not be matched: no boat or no oar set that can be read
  4  a fault of the program";

#[derive(Args, Debug)]
pub(in crate::cli) struct Match {
    /// The oar set or the boat, by its id, seat by seat [default: every oar set in every boat, in
    /// short]
    #[arg(value_name = "SET|BOAT")]
    pub(in crate::cli) name: Option<String>,

    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,

    /// text is for people; json is for programs, with every digit; markdown is for a web page
    #[arg(long, value_enum, default_value = "text")]
    pub(in crate::cli) format: MatchFormat,

    #[command(flatten)]
    pub(in crate::cli) look: LookOptions,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum MatchFormat {
    Text,
    Json,
    Markdown,
}
